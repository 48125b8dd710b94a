" Writing a résumé for quoin: comments, folds of long lines, `:make` for what is to mend, one fold a
" section, and in Neovim the language server.
if exists('b:did_ftplugin')
  finish
endif
let b:did_ftplugin = 1

setlocal commentstring=#\ %s comments=b:#,fb:--,fb:-
setlocal textwidth=100 formatoptions+=tcroqn
setlocal foldmethod=expr foldexpr=getline(v:lnum)=~#'^section:'?'>1':'=' foldlevel=9
setlocal makeprg=quoin\ proof\ %:S
setlocal errorformat=%f:%l:%c:\ %trror:\ %m,%f:%l:%c:\ %m,%f:%l:\ %m,%-G%.%#
let b:undo_ftplugin = 'setlocal commentstring< comments< textwidth< formatoptions< foldmethod<'
      \ . ' foldexpr< foldlevel< makeprg< errorformat<'

if has('nvim') && executable('quoin')
  lua vim.lsp.start({ name = 'quoin', cmd = { 'quoin', 'language-server' }, root_dir = vim.fn.expand('%:p:h') })
endif
