// The tables of verbs and options, and how each verb's request is filled from what was given.
#include "compiler/commands/verbs.hpp"

#include "compiler/commands/begin/begin.hpp"
#include "compiler/commands/caseload/caseload.hpp"
#include "compiler/commands/checks/checks.hpp"
#include "compiler/commands/glance/glance.hpp"
#include "compiler/commands/help/help.hpp"
#include "compiler/commands/language_server/language_server.hpp"
#include "compiler/commands/match/match.hpp"
#include "compiler/commands/mend/mend.hpp"
#include "compiler/commands/posting/posting.hpp"
#include "compiler/commands/proof/proof.hpp"
#include "compiler/commands/redline/redline.hpp"
#include "compiler/commands/scan/scan.hpp"
#include "compiler/commands/set/set.hpp"
#include "compiler/commands/tailor/tailor.hpp"
#include "compiler/commands/themes/themes.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <utility>

namespace quoin::commands {

namespace {

constexpr std::string_view no_resume = "a résumé file is required; use - for standard input";

stages::Choices choices_of(const Given& given) {
    stages::Choices choices;
    if (const auto tags = given.lists.find("for"); tags != given.lists.end())
        choices.tags = tags->second;
    if (given.has("theme")) choices.theme = given.text("theme");
    choices.paper = trade::named<trade::Paper>(given.text("paper"));
    return choices;
}

std::string format_of(const Given& given) {
    return given.has("format") ? given.text("format") : "text";
}

advice::OfficeChoice office_in(const Given& given) {
    return {given.text("office"), given.has("no-office")};
}

ExitCode do_set(const Given& given) {
    return run_set({.inputs = given.operands,
                    .output = given.text("output"),
                    .plain = given.text("plain"),
                    .deps = given.text("deps"),
                    .entry = given.text("entry"),
                    .posting = given.text("posting"),
                    .format = format_of(given),
                    .choices = choices_of(given),
                    .verify = given.has("verify"),
                    .explain = given.has("explain"),
                    .ascii = given.has("ascii"),
                    .draft = given.has("draft"),
                    .watch = given.has("watch"),
                    .if_changed = given.has("if-changed"),
                    .asked = given.all_options()});
}

ExitCode do_proof(const Given& given) {
    return run_proof_command({.inputs = given.operands,
                              .format = format_of(given),
                              .choices = choices_of(given),
                              .strict = given.has("strict"),
                              .summary = given.has("summary"),
                              .roster = given.has("roster"),
                              .ignore_accept = given.has("ignore-accept"),
                              .marked = given.text("marked"),
                              .office = office_in(given)});
}

ExitCode do_caseload(const Given& given) {
    return run_caseload({.places = given.operands,
                         .format = format_of(given),
                         .report = given.text("report"),
                         .stage = given.text("stage"),
                         .needs = given.text("needs"),
                         .check = given.text("check"),
                         .since = given.text("since"),
                         .until = given.text("until"),
                         .first = given.text("first"),
                         .due = given.has("due"),
                         .cohort = given.has("cohort"),
                         .terms = given.has("terms"),
                         .anonymous = given.has("anonymous"),
                         .no_cache = given.has("no-cache"),
                         .office = office_in(given)});
}

constexpr Verb verbs[] = {
    {"begin",
     "Make a first draft: by questions, or as notes to fill in.",
     {},
     {},
     "Asks in the terminal, says at each question what goes in and what does not, and looks at\n"
     "each answer. Leave at any time: answers are kept beside the draft, in NAME.begin, and the\n"
     "same command goes on. With both --stage and --field nothing is asked: the draft holds\n"
     "notes alone. With --from the draft is made of an old document: what is guessed stands\n"
     "below a comment, and no word of it is lost. A file that is there is never written over.\n\n"
     "Stages: undergraduate, recent-graduate, graduate-applicant, experienced, academic.\n"
     "Fields: any, lab, outdoors, software, business, health, arts, teaching, civic, trades.\n\n"
     "Exit status: 0 done, or left to go on later, 1 errors, 2 wrong use.",
     [](const Given& given) {
         return run_begin({.output = given.text("output"),
                           .stage = given.text("stage"),
                           .field = given.text("field"),
                           .from = given.text("from")});
     }},
    {"set", "Typeset a résumé as a tagged one-page PDF.", "FILE...", no_resume,
     "A FILE of - is standard input, and as an output standard output. Without -o the PDF\n"
     "goes beside its source: draft.resume to draft.pdf.\n\n"
     "Exit status: 0 done, 1 errors, 2 wrong use, 3 it does not fit the page.",
     do_set},
    {"proof", "Proofread a résumé: what to mend, where, and why.", "FILE...", no_resume,
     "A FILE of - is standard input. Findings that the résumé accepts are set aside:\n"
     "accept: NAME (reason). The rules of the career office, if a file office.rules stands\n"
     "beside FILE or above it, are followed ('quoin help office').\n\n"
     "Exit status: 0 nothing that must be mended, 1 something, or errors, 2 wrong use.",
     do_proof},
    {"mend", "Make the mends that change form alone, in the file.", "FILE...", no_resume,
     "A FILE of - is standard input, mended to standard output. The whole file is mended,\n"
     "whatever its tags.\n\n"
     "Exit status: 0 done, 1 errors, 2 wrong use.\n"
     "To mend is not to judge: it is 1 for errors alone, whatever is left.",
     [](const Given& given) {
         return run_mend({.inputs = given.operands,
                          .dry_run = given.has("dry-run"),
                          .office = office_in(given)});
     }},
    {"checks",
     "List what proof looks at, or explain the checks named.",
     "[NAME]...",
     {},
     "Without a NAME the names of all checks are listed; with some, what each looks at and why\n"
     "is printed.\n\n"
     "Exit status: 0 done, 1 it cannot be written, 2 wrong use.",
     [](const Given& given) {
         return run_checks({.names = given.operands,
                            .reference = given.has("reference"),
                            .office = office_in(given)});
     }},
    {"glance", "Tell what a reader takes in first, and when.", "FILE...", no_resume,
     "By a model, which is no promise: what is large, heavy, high on the page and has white\n"
     "above it comes first, and words are skimmed.\n\n"
     "Exit status: 0 done, 1 errors, 2 wrong use.",
     [](const Given& given) {
         return run_glance({.inputs = given.operands,
                            .format = format_of(given),
                            .choices = choices_of(given),
                            .marked = given.text("marked")});
     }},
    {"posting", "Tell what a job posting asks for.", "POSTING...",
     "a posting is required; use - for standard input",
     "A POSTING is text, HTML or PDF; - is standard input. Its terms are weighed by where they\n"
     "stand, how rare and how often; what tells of pay, of applying and the like is left out.\n\n"
     "Exit status: 0 done, 1 a posting that cannot be read, 2 wrong use.",
     [](const Given& given) {
         return run_posting({.inputs = given.operands,
                             .format = format_of(given),
                             .explain = given.has("explain")});
     }},
    {"match", "Tell how much of what a posting asks for a résumé shows.", "FILE POSTING...",
     "a résumé and a posting are required",
     "FILE is the résumé, the first POSTING the posting; what else is given tells of the job and\n"
     "weighs less: the employer's own page, an association's. Text, HTML or PDF; one of all may\n"
     "be -, standard input.\n\n"
     "Exit status: 0 done, 1 a file that cannot be read, 2 wrong use.",
     [](const Given& given) {
         return run_match({.inputs = given.operands,
                           .format = format_of(given),
                           .report = given.text("report"),
                           .choices = choices_of(given),
                           .explain = given.has("explain")});
     }},
    {"tailor", "Choose what of a résumé serves a posting best and fits its pages.", "FILE POSTING",
     "a résumé and a posting are required; use - for standard input",
     "FILE may hold everything there is to say. What is chosen is written to a source of its\n"
     "own, with a comment for each thing left out; FILE is never changed. Contact, education\n"
     "and what is tagged {keep} stay. A POSTING is text, HTML or a PDF.\n\n"
     "Exit status: 0 done, 1 errors, 2 wrong use, 3 what must stay does not fit the page.",
     [](const Given& given) {
         return run_tailor({.operands = given.operands,
                            .output = given.text("output"),
                            .choices = choices_of(given),
                            .explain = given.has("explain")});
     }},
    {"caseload", "Tell of all résumés in a folder who needs help first, and why.", "DIR...",
     "a folder of résumés is required; use - for a list of files on standard input",
     "Every *.resume below the folders is proofread and fitted, but for those that others take\n"
     "in; drafts and their days are those that git has, else the day of the file. Due is who has\n"
     "something that must be mended, does not fit, or has sent no draft for a term. What was "
     "found\n"
     "is kept in $XDG_CACHE_HOME/quoin, on this machine alone, and not found again.\n\n"
     "Exit status: 0 done, 1 nothing is there, or a place cannot be read, 2 wrong use.",
     do_caseload},
    {"scan", "Tell what an applicant portal gets out of any PDF.", "FILE...",
     "a PDF file is required",
     "Prints the text in reading order, what is found in it, and what is wrong. Poppler's\n"
     "tools (Debian package poppler-utils) read each file, under limits of their own.\n\n"
     "Exit status: 0 nothing is wrong, 1 faults or a file that cannot be read, 2 wrong use.",
     [](const Given& given) {
         return run_scan({.inputs = given.operands, .format = format_of(given)});
     }},
    {"redline", "Tell what changed between two drafts of a résumé.", "DRAFT...",
     "a draft is required; write 'quoin redline OLD NEW', or 'quoin redline FILE'",
     "Of two drafts, the old one first; of one, what changed since the revision that git has of\n"
     "it, HEAD where none is named. One of two may be -, standard input. What is the same in\n"
     "both is not said, and of drafts that are the same nothing is.\n\n"
     "Exit status: 0 done, whatever changed, 1 a draft that cannot be read, 2 wrong use.",
     [](const Given& given) {
         return run_redline({.drafts = given.operands,
                             .since = given.text("since"),
                             .as = given.text("as"),
                             .format = format_of(given),
                             .choices = choices_of(given),
                             .marked = given.text("marked")});
     }},
    {"themes",
     "List the themes, or set a specimen page of one.",
     {},
     {},
     "Exit status: 0 done, 1 errors, 2 wrong use, 3 it does not fit the page.",
     [](const Given& given) {
         return run_themes({.specimen = given.text("specimen"),
                            .output = given.text("output"),
                            .format = format_of(given)});
     }},
    {"language-server",
     "Tell an editor, while one types, what set and proof know.",
     {},
     {},
     "An editor starts it and speaks with it over standard input and output, by the Language\n"
     "Server Protocol, 3.17. Files that a résumé takes in, its theme and its office's rules are\n"
     "read anew when they change.\n\n"
     "Exit status: 0 the editor said shutdown and exit, 1 it hung up, 2 wrong use.",
     [](const Given& given) { return run_language_server({.office = office_in(given)}); }},
    {"help",
     "Print what a verb does, or the reference of the markup, themes or checks.",
     "[TOPIC]...",
     {},
     "A TOPIC is a verb, or a reference: markup, themes, checks or office. On a terminal it is\n"
     "shown by the program that PAGER names, less if it names none.\n\n"
     "Exit status: 0 done, 1 it cannot be read or written, 2 wrong use.",
     [](const Given& given) {
         return run_help({.topics = given.operands, .format = format_of(given)});
     }},
};

constexpr Option options[] = {
    {"begin", "-o,--output FILE", "write the draft to FILE instead of draft.resume"},
    {.verb = "begin",
     .form = "--from OLD",
     .does = "make it of an old résumé: a PDF, .docx, .odt or .txt; nothing is lost",
     .excludes = "stage",
     .refusal = "an old résumé is taken as it is: --from asks nothing, so leave out --stage"},
    {"begin", "--stage STAGE", "where you are in your studies or your work"},
    {"begin", "--field FIELD", "the kind of work you have in mind"},
    {"set", "-o,--output FILE", "write the PDF to FILE, or each of several into the folder FILE"},
    {"set", "--for TAG...", "keep what is tagged TAG; may be repeated"},
    {"set", "--theme NAME", "the theme's name, or a path to a theme file"},
    {"set", "--paper SIZE", "letter or a4", "paper size: letter, a4"},
    {"set", "--plain FILE",
     "write the text for a portal's form to FILE; without -o, no PDF is written"},
    {.verb = "set",
     .form = "--entry WHICH",
     .does = "of --plain, one entry: by its number, or by words of it",
     .needs = "plain"},
    {.verb = "set",
     .form = "--ascii",
     .does = "of --plain, in ASCII alone, for a form that takes nothing else",
     .needs = "plain"},
    {.verb = "set",
     .form = "--explain",
     .does = "print why the page is set as it is, and what the next better setting lacks",
     .excludes = "format",
     .refusal = "--explain is text; --format {} tells programs of the fit",
     .otherwise = "for what a check looks at and why, 'quoin checks NAME'"},
    {"set", "--draft",
     "set what does not fit too, as small as allowed, on as many pages as it takes"},
    {"set", "--deps FILE", "write what the outputs depend on to FILE, for make"},
    {"set", "--verify", "read the PDF back before it is written; a word lost is an error"},
    {.verb = "set",
     .form = "--watch",
     .does = "set again whenever a file that it is made from changes, until stopped",
     .excludes = "format",
     .refusal = "--watch goes on until it is stopped, and --format {} tells of one run; give one"},
    {.verb = "set",
     .form = "--if-changed",
     .does = "set only what has changed, by what files hold and not by their times",
     .excludes = "format",
     .refusal = "--if-changed may have nothing to tell, and --format {} tells of a page; give one"},
    {"set", "--posting POSTING", "of FILE, what serves that posting best and fits, as for tailor"},
    {"set", "--format FORMAT", "text, or json: fit, cuts and outputs, for programs",
     "format: text, json"},
    {"tailor", "-o,--output FILE", "write the chosen résumé to FILE, a source"},
    {"tailor", "--theme NAME", "the theme it is to fit in, as for set"},
    {"tailor", "--paper SIZE", "letter or a4", "paper size: letter, a4"},
    {"tailor", "--explain", "print what was chosen, and what would have been next"},
    {"proof", "--for TAG...", "proofread the build for TAG; may be repeated"},
    {"proof", "--theme NAME", "the theme to set the page in, as for set"},
    {"proof", "--paper SIZE", "letter or a4", "paper size: letter, a4"},
    {"proof", "--strict", "fail for what should be mended, too"},
    {"proof", "--summary", "say in a few lines what matters most, and what is good already"},
    {.verb = "proof",
     .form = "--roster",
     .does = "say in one line a résumé: verdict, counts, page, what is set aside",
     .excludes = "format",
     .refusal = "--roster is text; --summary --format {} tells programs the same"},
    {"proof", "--ignore-accept", "list what the résumé sets aside by 'accept', too"},
    {"proof", "--marked FILE",
     "write the page with every finding noted at its words to FILE; of several, to a folder"},
    {"proof", "--format FORMAT", "text, json or sarif", "format: text, json, sarif"},
    {"proof", "--office FILE", "follow the rules of FILE, not of the office.rules found above"},
    {.verb = "proof",
     .form = "--no-office",
     .does = "follow no office's rules",
     .excludes = "office",
     .refusal = "--no-office follows no rules, and {} is a file of them; give one"},
    {"mend", "--dry-run", "print what would change, and change nothing"},
    {"mend", "--office FILE", "follow the rules of FILE: what they have off is not mended"},
    {.verb = "mend",
     .form = "--no-office",
     .does = "follow no office's rules",
     .excludes = "office",
     .refusal = "--no-office follows no rules, and {} is a file of them; give one"},
    {"checks", "--list",
     "list all checks, as without a NAME; with an office's rules, their effect"},
    {"checks", "--office FILE", "tell what the rules of FILE change of each check and number"},
    {.verb = "checks",
     .form = "--no-office",
     .does = "tell of no office's rules",
     .excludes = "office",
     .refusal = "--no-office follows no rules, and {} is a file of them; give one"},
    {.verb = "checks",
     .form = "--reference",
     .does = "print the reference page of all checks",
     .excludes = "operands",
     .refusal = "--reference is the page of all checks, and takes no names"},
    {"glance", "--for TAG...", "look at the build for TAG; may be repeated"},
    {"glance", "--theme NAME", "the theme to set the page in, as for set"},
    {"glance", "--paper SIZE", "letter or a4", "paper size: letter, a4"},
    {"glance", "--marked FILE", "write the page to FILE, a PDF, with the rest of it in grey"},
    {"glance", "--format FORMAT", "text or json", "format: text, json"},
    {"posting", "--explain", "show each term's sentence and arithmetic, and what was left out"},
    {"posting", "--format FORMAT", "text or json", "format: text, json"},
    {"match", "--for TAG...", "match the build for TAG; may be repeated"},
    {"match", "--explain", "show the arithmetic, too"},
    {"match", "--report FILE",
     "write a page to FILE, HTML that stands by itself; - alone: to standard output"},
    {"match", "--format FORMAT", "text or json", "format: text, json"},
    {"caseload", "--due", "only who is due"},
    {"caseload", "--stage STAGE", "only who is undergraduate, recent graduate, …",
     "stage: undergraduate, recent graduate, graduate applicant, experienced, academic"},
    {"caseload", "--needs WHAT", "only who lacks it: must, should, fit, reading or draft",
     "need: must, should, fit, reading, draft"},
    {"caseload", "--check NAME", "only who has a finding of that check"},
    {"caseload", "--since DATE", "only whose last draft is of that day or later: 2026-11-01"},
    {"caseload", "--until DATE", "only who has sent no draft after that day"},
    {"caseload", "--first COUNT", "of those, only so many"},
    {"caseload", "--cohort", "what they have in common instead: what to teach next"},
    {"caseload", "--terms", "how they moved from term to term instead"},
    {"caseload", "--anonymous", "numbers for names, the same all term, and no lines that tell"},
    {"caseload", "--report FILE",
     "write a page to FILE, HTML that stands by itself; - alone: to standard output"},
    {"caseload", "--office FILE", "follow the rules of FILE, not of each office.rules found above"},
    {.verb = "caseload",
     .form = "--no-office",
     .does = "follow no office's rules",
     .excludes = "office",
     .refusal = "--no-office follows no rules, and {} is a file of them; give one"},
    {"caseload", "--no-cache", "find everything anew, and keep nothing"},
    {"caseload", "--format FORMAT", "text, csv or json", "format: text, csv, json"},
    {"scan", "--format FORMAT", "text, to be read, or json, for programs", "format: text, json"},
    {"redline", "--since REVISION", "of one FILE, compare with this revision, in git's own terms"},
    {"redline", "--as FILE",
     "read both drafts as FILE, of which they are copies, for git difftool"},
    {"redline", "--for TAG...", "compare the builds for TAG; may be repeated"},
    {"redline", "--theme NAME", "the theme to set both in, as for set"},
    {"redline", "--paper SIZE", "letter or a4", "paper size: letter, a4"},
    {"redline", "--marked FILE",
     "write the new page to FILE, a PDF: what is new underlined, what is gone struck through"},
    {"redline", "--format FORMAT", "text or json", "format: text, json"},
    {"language-server", "--office FILE",
     "follow the rules of FILE, not of each office.rules found"},
    {.verb = "language-server",
     .form = "--no-office",
     .does = "follow no office's rules",
     .excludes = "office",
     .refusal = "--no-office follows no rules, and {} is a file of them; give one"},
    {.verb = "themes",
     .form = "--specimen NAME",
     .does = "set a specimen that shows all of a theme: its name, or a path",
     .excludes = "format",
     .refusal = "--specimen sets one theme, and --format {} lists them all; give one"},
    {.verb = "themes",
     .form = "-o,--output FILE",
     .does = "write the specimen to FILE instead of NAME.pdf",
     .needs = "specimen"},
    {"themes", "--format FORMAT", "text or json", "format: text, json"},
    {.verb = "help",
     .form = "--format FORMAT",
     .does = "text, or json: all verbs and options, for programs",
     .words = "format: text, json",
     .excludes = "operands",
     .refusal = "--format tells of all verbs, and takes no topics"},
};

}

std::string_view Option::argument() const {
    const std::string_view after = form.substr(std::min(names().size() + 1, form.size()));
    return after.substr(0, after.find('.'));
}

std::span<const Verb> all_verbs() {
    return verbs;
}

std::span<const Option> common_options() {
    static constexpr Option common[] = {{{},
                                         "--color WHEN",
                                         "colours: auto, on a terminal; always; or never",
                                         "time of colours: auto, always, never"}};
    return common;
}

std::span<const Option> all_options() {
    return options;
}

const Verb* find_verb(std::string_view name) {
    const auto* found = std::ranges::find(verbs, name, &Verb::name);
    return found == std::end(verbs) ? nullptr : found;
}

const Option* find_option(std::string_view verb, std::string_view name) {
    const auto* found = std::ranges::find_if(
        options, [&](const Option& row) { return row.verb == verb && row.name() == name; });
    return found == std::end(options) ? nullptr : found;
}

}
