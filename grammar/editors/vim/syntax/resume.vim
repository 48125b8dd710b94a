" The markup of quoin (grammar/lines.hpp, grammar/inline.hpp): the lines by how they begin, and in them
" tags, links and marks.
if exists('b:current_syntax')
  finish
endif

syntax match resumeComment /^#.*$/
syntax match resumeLabel /^\a[^:]\{-}:/ contained nextgroup=resumeText
syntax match resumeField /^\a[^:]\{-}:.*$/ contains=resumeLabel,resumeTag,resumeLink,resumeStrong,resumeEmphasis,resumeUnderline
syntax match resumeSection /^section:.*$/ contains=resumeTag
syntax match resumeBullet /^--\?\ze\s/ nextgroup=resumeText
syntax match resumeTag /{[^{}]*}\s*$/ contained containedin=resumeText
syntax match resumeLink /<[^<> ]\+>/
syntax match resumeStrong /\(^\|[ ("']\)\@<=\*\S\(.\{-}\S\)\?\*\ze\($\|[ .,;:!?)"']\)/
syntax match resumeEmphasis /\(^\|[ ("']\)\@<=\/\S\(.\{-}\S\)\?\/\ze\($\|[ .,;:!?)"']\)/
syntax match resumeUnderline /\(^\|[ ("']\)\@<=_\S\(.\{-}\S\)\?_\ze\($\|[ .,;:!?)"']\)/
syntax match resumeTag /{[^{}]*}\s*$/

highlight default link resumeComment Comment
highlight default link resumeLabel Identifier
highlight default link resumeSection Title
highlight default link resumeBullet Statement
highlight default link resumeTag Special
highlight default link resumeLink Underlined
highlight default resumeStrong term=bold cterm=bold gui=bold
highlight default resumeEmphasis term=italic cterm=italic gui=italic
highlight default resumeUnderline term=underline cterm=underline gui=underline

let b:current_syntax = 'resume'
