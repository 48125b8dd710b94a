" Résumés of quoin, by their names.
autocmd BufNewFile,BufRead *.resume setfiletype resume
