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
  lua << SERVER
  local server = { name = 'quoin', cmd = { 'quoin', 'language-server' }, root_dir = vim.fn.expand('%:p:h') }
  if vim.lsp.start then
    vim.lsp.start(server)
  else -- before 0.8; one for all buffers
    vim.g.quoin_server = vim.g.quoin_server or vim.lsp.start_client(server)
    vim.lsp.buf_attach_client(0, vim.g.quoin_server)
  end
SERVER
endif
