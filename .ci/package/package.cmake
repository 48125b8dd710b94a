# What `cpack` makes: `cpack -G DEB` a Debian package, `cpack -G TGZ --config CPackSourceConfig.cmake` a
# tarball of the source, with what it was made from written down in it. Included by CMakeLists.txt.

set(CPACK_PACKAGE_NAME quoin)
set(CPACK_PACKAGE_VENDOR "The quoin authors")
set(CPACK_PACKAGE_CONTACT "The quoin authors <quoin@packages.example.org>")
set(CPACK_PACKAGE_VERSION ${PROJECT_VERSION})
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "typesetting and proofreading of plain-text résumés")
set(CPACK_STRIP_FILES ON)
set(CPACK_VERBATIM_VARIABLES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
  OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)

set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION text)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_DEPENDS poppler-utils) # programs that are run
set(CPACK_DEBIAN_PACKAGE_SUGGESTS "git, less, hunspell-fr, hunspell-de-de, hunspell-es")
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION
"A résumé is written as labelled lines of plain text, and quoin makes of it a
tagged PDF of one page, whose words come out whole with every reader. What
is wrong with it is told at its line, with the mend: of the markup, of the
wording, of the page.
.
It also tells what an applicant portal gets of any PDF, how much of a job
posting a résumé shows, what changed between two drafts, and, for a career
adviser, who of a folder of them needs help first.")

set(CPACK_SOURCE_PACKAGE_FILE_NAME quoin-${PROJECT_VERSION})
string(REGEX REPLACE "([][+.*()^$?|\\])" "\\\\\\1" source ${PROJECT_SOURCE_DIR})
set(CPACK_SOURCE_IGNORE_FILES
  "^${source}/build[^/]*/" "^${source}/samples/[^/]*\\.(pdf|d)$" "/\\.git/" "/\\.git$" "/__pycache__/"
  "/node_modules/" "\\.pdf\\.part$" "/compile_commands\\.json$")

configure_file(.ci/package/finish.cmake.in ${PROJECT_BINARY_DIR}/finish_package.cmake @ONLY)
set(CPACK_PRE_BUILD_SCRIPTS ${PROJECT_BINARY_DIR}/finish_package.cmake)
include(CPack)
