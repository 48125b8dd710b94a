;;; quoin-resume-mode.el --- Writing a résumé for quoin  -*- lexical-binding: t -*-

;;; Commentary:

;; Colours, an index of sections and entries, an outline, `M-x compile' for what is to mend, and
;; where Eglot is, the language server by `M-x eglot'.  In the init file:
;;     (add-to-list 'load-path "/usr/share/quoin/editors/emacs")
;;     (require 'quoin-resume-mode)

;;; Code:

(require 'compile)

(defvar quoin-resume-font-lock-keywords
  ;; The lines by how they begin, and in them tags, links and marks.
  '(("^#.*$" . font-lock-comment-face)
    ("^\\(section:\\)\\(.*\\)$" (1 font-lock-keyword-face) (2 font-lock-function-name-face))
    ("^[[:alpha:]][^:\n]*?:" . font-lock-variable-name-face)
    ("^--?\\(?:[ \t]\\)" . font-lock-keyword-face)
    ("{[^{}\n]*}[ \t]*$" 0 font-lock-constant-face t)
    ("<[^<> \n]+>" 0 'link t)
    ("\\(?:^\\|[ (\"']\\)\\(\\*[^ *\n]\\(?:[^*\n]*[^ *\n]\\)?\\*\\)\\(?:$\\|[ .,;:!?)\"']\\)" 1 'bold)
    ("\\(?:^\\|[ (\"']\\)\\(/[^ /\n]\\(?:[^/\n]*[^ /\n]\\)?/\\)\\(?:$\\|[ .,;:!?)\"']\\)" 1 'italic))
  "Colours of a résumé.")

(defvar quoin-resume-imenu-expression
  '(("Sections" "^section: *\\(.*\\)" 1)
    ("Entries" "^\n\\(?:#.*\n\\)*\\([[:alpha:]][^:\n]*: .*\\)\n[[:alpha:]-]" 1))
  "Sections, and entries by their first line.")

(add-to-list 'compilation-error-regexp-alist-alist
             '(quoin "^\\([^:\n]+\\):\\([0-9]+\\):\\([0-9]+\\): \
\\(?:must\\|error\\|\\(should\\|warning\\)\\|\\(consider\\|reminder\\|note\\)\\)\\_>"
                     1 2 3 (4 . 5)))
(add-to-list 'compilation-error-regexp-alist 'quoin)

;;;###autoload
(define-derived-mode quoin-resume-mode text-mode "Résumé"
  "Major mode for résumés that quoin sets."
  (setq-local comment-start "# "
              comment-start-skip "^# *"
              font-lock-defaults '(quoin-resume-font-lock-keywords t)
              imenu-generic-expression quoin-resume-imenu-expression
              outline-regexp "section:"
              fill-column 100)
  (when buffer-file-name
    (setq-local compile-command
                (concat "quoin proof " (shell-quote-argument (file-name-nondirectory buffer-file-name))))))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.resume\\'" . quoin-resume-mode))

(defvar eglot-server-programs)
(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs '(quoin-resume-mode . ("quoin" "language-server"))))

(provide 'quoin-resume-mode)
;;; quoin-resume-mode.el ends here
