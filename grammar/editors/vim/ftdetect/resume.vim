" Résumés and themes of quoin, by their names.
autocmd BufNewFile,BufRead *.resume,*.theme setfiletype resume
