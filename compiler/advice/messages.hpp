// What the checks find, in words: what is wrong here and how to mend it, a row a finding, in the
// order of the groups. A mend that depends on what was found is a message of its own.
#pragma once

#include "compiler/advice/claim_messages.hpp"
#include "compiler/advice/office_messages.hpp"
#include "compiler/advice/sentence_messages.hpp"
#include "compiler/advice/spelling_messages.hpp"
#include "compiler/base/message.hpp"

namespace quoin::advice::messages {

// --- the heading

inline constexpr FindingRow no_contact{"no {} in the heading"};
inline constexpr Message add_line = "add a line such as '{}'";
inline constexpr FindingRow address_details{"the address gives {}",
                                            "city and state are enough, such as 'Port Ellery, WA'"};
inline constexpr FindingRow no_domain{"{} has no dot after its @, and mail goes to a domain",
                                      "add the end of the domain, such as '.com' or '.edu'"};
inline constexpr FindingRow no_address{"{} is no address that mail can reach: {}"};
inline constexpr Message write_address = "write '{}'";
inline constexpr Message odd_sign_in_address = "it has '{}' in it";
inline constexpr FindingRow odd_address{"this address has {}",
                                        "one made of your name is read without a second thought"};
inline constexpr Message year_of_birth = "the year '{}', which reads as a year of birth";
inline constexpr Message long_number = "the long number '{}'";
inline constexpr Message second_meaning =
    "the number '{}', which means something else to some readers";
inline constexpr Message nickname = "the word '{}'";
inline constexpr Message shared_address = "the word '{}', as if several read it";
inline constexpr Message figures_for_letters = "figures in the place of letters, '{}'";
inline constexpr Message nothing_of_name = "nothing of your name, '{}'";
inline constexpr FindingRow private_email{
    "this address is not your school's",
    "while you are enrolled, the school's own address vouches for you"};
inline constexpr FindingRow wrong_phone{"{} {}",
                                        "write it with its area code, such as '(360) 555-0142'"};
inline constexpr Message no_figures = "has no figures";
inline constexpr Message letters_in_phone = "has letters, and a portal takes figures alone";
inline constexpr Message undialled = "cannot be dialled: {}";
inline constexpr Message not_ten_figures = "a number in the US has ten figures after +1";
inline constexpr Message wrong_area_code = "in the US, area code and exchange begin with 2 to 9";
inline constexpr Message no_area_code = "the area code is missing";
inline constexpr Message wrong_international = "an international number has 7 to 15 figures";
inline constexpr Message wrong_figures =
    "it has {}, and a number in the US has ten; one of another country begins with + and its code";
inline constexpr FindingRow phone_in_two_ways{"{} is written in another way than {}",
                                              "write both in one way"};
inline constexpr FindingRow check_voicemail{
    "who calls this number may reach its voicemail",
    "see that it has room and that the greeting says your name"};
inline constexpr FindingRow hard_link{
    "this link is hard to read or to type: {}",
    "shorten it, or give it words: 'link: Portfolio <https://…>'"};
inline constexpr Message tracking_link = "it carries parameters that only track who sent it";
inline constexpr Message idle_beginning = "'{}' takes room and tells nothing";
inline constexpr Message random_tail = "its tail '{}' looks random";
inline constexpr Message long_link = "it has {} characters, where about {} can be read at a glance";

// --- sections

inline constexpr FindingRow no_section{"there is no section of {}"};
inline constexpr Message add_education =
    "add 'section: Education' with your school, degree and graduation";
inline constexpr Message unpaid_counts =
    "work without pay counts too: research, service, a family business";
inline constexpr FindingRow empty_section{"the section {} holds nothing",
                                          "fill it or take it out; 'set' prints no heading for it"};
inline constexpr FindingRow section_twice{"a second section is called {}"};
inline constexpr Message join_sections =
    "join it to the one in line {}, or say in the title what sets it apart";
inline constexpr FindingRow unknown_title{"a portal may not know what {} holds"};
inline constexpr Message usual_title = "the usual title is '{}', alone or after a word of yours";
inline constexpr FindingRow education_below{"{} stands above {}",
                                            "a student's education comes first"};

// --- schools and degrees

inline constexpr FindingRow degree_out_of_order{"{} stands above {}, which is more recent",
                                                "put the most recent degree first"};
inline constexpr FindingRow unusual_degree{"{} is not how a degree is usually named: it has {}"};
inline constexpr Message usual_degree = "the usual form is '{}'";
inline constexpr Message likely_degree = "the usual form is '{}'; see which your school awards";
inline constexpr Message in_for_of = "'in' where 'of' is usual";
inline constexpr Message of_left_out = "'of' left out";
inline constexpr Message in_left_out = "'in' left out";
inline constexpr Message of_for_in = "'of' where 'in' belongs";
inline constexpr Message small_letters = "small letters where a title has capitals";
inline constexpr Message science_in_arts = "a degree of science in arts";
inline constexpr Message doctorate = "'Doctorate'";
inline constexpr FindingRow no_degree_type{
    "{} does not say which degree it is",
    "give its full name, such as 'Bachelor of Science in Biology'"};
inline constexpr FindingRow no_graduation{
    "{} has no date of graduation",
    "add its month and year, such as 'graduation: May 2027 (expected)'"};
inline constexpr FindingRow no_month{"{} does not say in which month {} is awarded",
                                     "write month and year, such as 'May 2027 (expected)'"};
inline constexpr FindingRow no_gpa{"{} is no GPA that can be read",
                                   "write the number and its scale, such as '3.62 / 4.00'"};
inline constexpr FindingRow gpa_over_scale{"{} is over its scale", "see where the slip is"};
inline constexpr FindingRow gpa_without_scale{"{} does not say out of what"};
inline constexpr Message add_scale = "add the scale: '{} / 4.00'";
inline constexpr Message add_scale_as_in = "add the scale, as in '3.62 / 4.00'";
inline constexpr FindingRow many_decimals{
    "{} has {}", "two are enough, and rounding up past a threshold is not done"};
inline constexpr FindingRow low_gpa{"{} is under {}", "leave it out, and let the work speak"};
inline constexpr FindingRow gpa_unsaid{"no GPA is given for {}"};
inline constexpr Message show_gpa = "show it if it is {} or over; from {} it may be shown";
inline constexpr FindingRow activity_of_school{"{} ended by the end of high school",
                                               "something of your college years tells more"};
inline constexpr FindingRow high_school{"{} still stands beside a college",
                                        "leave it out from the second year on"};
inline constexpr FindingRow honors_out_of_order{
    "{} ranks above the Dean's List, which stands first", "begin with the highest honor"};
inline constexpr FindingRow course_twice{"the course {} is listed twice", "take one of them out"};
inline constexpr FindingRow many_courses{"{} listed"};
inline constexpr Message keep_courses = "keep the {} or fewer that the employer would ask about";

// --- dates

inline constexpr Message dates_within =
    "its dates stand in '{}': give them a line of their own, 'dates: {}'";
inline constexpr Message graduation_within =
    "it stands in the line of the degree: give it one of its own, 'graduation: {}'";
inline constexpr FindingRow no_dates{"{} has no dates",
                                     "add a line such as 'dates: Jun 2026 - Aug 2026'"};
inline constexpr FindingRow ends_before_start{"this ends in {}, before it starts in {}",
                                              "see which of the two dates has the slip"};
inline constexpr FindingRow one_year_for_two{"{} is read and printed as {} to {}"};
inline constexpr Message give_both_years = "did it start in {}? then give both years";
inline constexpr FindingRow day_given{
    "{} gives the day", "month and year are enough; the page shows no day in any case"};
inline constexpr std::string_view alike_on_page =
    "the page prints all alike; 'quoin mend' makes the source alike too";
inline constexpr FindingRow date_form_of_one{
    "dates are written in more than one way; the one in line {} differs from '{}'", alike_on_page};
inline constexpr FindingRow date_forms_of_some{
    "dates are written in more than one way; those in lines {} differ from '{}'", alike_on_page};
inline constexpr FindingRow expected_past{"{} is called expected and is past",
                                          "if it has come about, take out 'expected'"};
inline constexpr FindingRow begins_ahead{
    "{} begins in the future", "see which year it was; what is still to come is 'expected'"};
inline constexpr FindingRow not_updated{"not brought up to date for {}",
                                        "add what the last term brought, then set 'updated' anew"};
inline constexpr FindingRow stale_present{"'present' was last looked at {} ago",
                                          "if this has ended since, give the month it ended in"};

// --- entries

inline constexpr FindingRow bullet_count{"{} has {}"};
inline constexpr Message too_few_bullets = "say what you did and what came of it, in {}";
inline constexpr Message too_many_bullets = "keep the {} that this employer would ask about";
inline constexpr FindingRow one_bullet{"{} stands first and has one bullet"};
inline constexpr FindingRow no_role{"under {} there is no role",
                                    "add a line 'role:' with what you were there"};
inline constexpr FindingRow no_employer{
    "{} names no employer",
    "add a line 'employer:' with the full name of the place that you worked for"};
inline constexpr FindingRow no_place{
    "{} names no place", "add a line such as 'place: Anacortes, WA', or 'place: Remote'"};
inline constexpr FindingRow closer_to_goal{
    "{} is closer to your goal than {}, which stands above it by its dates",
    "two sections, 'Relevant Experience' and 'Additional Experience', bring it to the top and keep "
    "the order of dates"};
inline constexpr FindingRow single_day{
    "{} lasted a single day", "its lines may serve you better elsewhere, unless the day was rare"};
inline constexpr FindingRow member_only{
    "{} is all that is said of {}",
    "if you led, planned or made something there, say so in a bullet"};
inline constexpr FindingRow more_than_member{"{} hides what the bullets below it tell",
                                             "name the part that you played: Event Planner"};
inline constexpr Message this_activity = "this activity";
inline constexpr Message this_entry = "this entry";

// --- the wording of bullets

inline constexpr FindingRow wrong_tense{"{} {} in the {}, but {}"};
inline constexpr FindingRow present_in_past_time{"{} is in the present, and {} is past"};
inline constexpr FindingRow third_person{"{} is in the third person, and {} plain verbs"};
inline constexpr FindingRow no_tense{"{} {} neither past nor present; {}"};
inline constexpr Message has_ended = "{} has ended";
inline constexpr Message goes_on = "{} goes on";
inline constexpr Message write = "write {}";
inline constexpr FindingRow no_verb{"this bullet opens with {}, not with what you did"};
inline constexpr Message begin_with_verb = "begin with the verb that says it";
inline constexpr Message begin_with = "begin with a verb, such as {}";
inline constexpr FindingRow weak_opening{"{} says that you were near the work, not what you did"};
inline constexpr Message begin_with_deed = "begin with what you did yourself";
inline constexpr Message stronger_in_past = "begin with what you did: {}, if it is true";
inline constexpr Message stronger_in_present = "begin with what you do: {}, if it is true";
inline constexpr FindingRow repeated_opening{"{} opens {}, on lines {}, in one form or another"};
inline constexpr Message other_verbs = "other verbs may say more exactly what you did";
inline constexpr Message kin_verbs = "where it is true, {} may say it more exactly";
inline constexpr FindingRow first_person{"{} {} in the first person"};
inline constexpr Message drop_subject = "leave {} out and begin with the verb";
inline constexpr Message drop_possessive = "leave it out, or write 'the'";
inline constexpr Message drop_pronoun = "say it without the pronoun";
inline constexpr FindingRow little_words{"{} {} {}",
                                         "bullets go well without articles and other little words"};
inline constexpr Message words_and_lines = "{} and {}";
inline constexpr FindingRow full_sentence{"this bullet is a sentence with a subject of its own, {}",
                                          "make it what you did, with the verb first"};
inline constexpr FindingRow passive{"{} is passive and hides who did what"};
inline constexpr Message active_for_opening = "say what you did yourself, in an active verb";
inline constexpr Message active_for_clause = "say who did it, in an active verb";
inline constexpr Message participle_alone = "{} alone says as much";
inline constexpr FindingRow no_figure{
    "no bullet of {} has a figure in it",
    "say how many, how often, how much or how large, where you know it"};
inline constexpr std::string_view see_figure =
    "see which figure has the slip; a change goes 'from' one 'to' the other";
inline constexpr FindingRow falls_by_more{
    "{} is more than there was; nothing falls by over 100 percent", see_figure};
inline constexpr FindingRow upside_down{"{} runs from the greater figure down to the smaller",
                                        see_figure};
inline constexpr FindingRow wrong_way{"{} runs the other way than its verb", see_figure};
inline constexpr FindingRow more_than_whole{"{} is more than the whole", see_figure};
inline constexpr FindingRow other_share{"{} does not come to the share that is told", see_figure};
inline constexpr FindingRow other_change{"{} does not come to the change that is told", see_figure};
inline constexpr FindingRow other_total{"{} does not add up to the total that is told", see_figure};
inline constexpr FindingRow other_count{"{} names another number of them than it says", see_figure};
inline constexpr FindingRow longer_than_dates{"{} is longer than the dates of the entry",
                                              "see which of the two has the slip"};
inline constexpr std::string_view add_result = "add what changed, for how many, or what it was for";
inline constexpr FindingRow one_task{"this bullet of {} tells a task and not what came of it",
                                     add_result};
inline constexpr FindingRow some_tasks{"{} of {}, on lines {}, tell a task and not what came of it",
                                       add_result};
inline constexpr FindingRow empty_phrase{"{} tells the reader nothing"};
inline constexpr FindingRow empty_phrases{"{} tell the reader nothing"};
inline constexpr Message show_it = "leave it out, and let a bullet show it";
inline constexpr Message name_them = "name them, or give their number";
inline constexpr Message stop_there = "name what is meant, or stop before it";
inline constexpr Message give_record = "give the record instead";
inline constexpr Message say_news = "say what was new about it";
inline constexpr Message say_plainly = "say it in one word, or leave it out";
inline constexpr Message say_who = "say who worked with whom on what";

// --- skills

inline constexpr FindingRow no_skills{
    "there is no section of skills",
    "name the instruments, software and languages that you can work with: 'section: Skills', then "
    "lines such as 'Laboratory: titration, PCR'"};
inline constexpr FindingRow no_level{
    "{} has no level",
    "add one in parentheses: native, fluent, professional, conversational or basic"};
inline constexpr FindingRow unknown_level{
    "{} is no level that readers know",
    "such are native, fluent, professional, conversational and basic, and those of CEFR (B2) and "
    "ILR (ILR 3)"};
inline constexpr FindingRow two_levels{"{} claims two levels that exclude each other",
                                       "keep the one that a conversation would bear out"};
inline constexpr FindingRow graded_skill{
    "{} grades a skill by a figure, and nobody knows of what scale",
    "say what you made with it, or for how many years you have used it"};
inline constexpr FindingRow idle_pastime{
    "{} is rest, as everybody takes it",
    "name something that you make, play or train for, or use the line otherwise"};
inline constexpr FindingRow unknown_abbreviations{
    "{} are abbreviations that few outside the trade can read",
    "write the words out, or say what they come to; 'abbreviations' explains those that stay"};
inline constexpr FindingRow skill_twice{"{} stands in line {} already",
                                        "keep it where a reader would look first"};
inline constexpr FindingRow unused_skills{
    "no entry shows {} in use",
    "a bullet that names what you did with it is what makes it believed"};
inline constexpr FindingRow broad_skill{"{} is so broad that it tells nothing",
                                        "name the program, method or situation, or leave it out"};

// --- consistency

inline constexpr FindingRow one_lacks_stop{"the bullet in line {} lacks a full stop, and {}",
                                           "add one"};
inline constexpr FindingRow some_lack_stop{"the bullets in lines {} lack a full stop, and {}",
                                           "add one to each"};
inline constexpr FindingRow one_has_stop{"the bullet in line {} ends with a full stop, and {}",
                                         "take it out"};
inline constexpr FindingRow some_have_stop{"the bullets in lines {} end with a full stop, and {}",
                                           "take them out"};
inline constexpr FindingRow two_cases{"{} is written with {}, other {} with {}",
                                      "write them in one way"};
inline constexpr Message title_case = "Capitals for Each Word";
inline constexpr Message sentence_case = "Capital for the first word";
inline constexpr Message all_capitals = "ALL CAPITALS";
inline constexpr Message small_case = "small letters";
inline constexpr FindingRow place_forms{
    "{} is written in another form than {}",
    "write all places as city and state, such as 'Port Ellery, WA'"};
inline constexpr FindingRow mixed_commas{"{} has no comma, and {} has one"};
inline constexpr Message write_quoted = "write '{}'";
inline constexpr FindingRow words_and_figures{"{} is counted in words, and {} in figures",
                                              "figures are seen at a glance"};
inline constexpr FindingRow comma_lacking{
    "no comma before the last of a list in {}, and one elsewhere", "put it in"};
inline constexpr FindingRow comma_beside{
    "a comma before the last of a list in {}, and none elsewhere", "take it out"};
inline constexpr FindingRow british_alone{"{} is spelled as in Britain"};
inline constexpr Message write_or_set_language = "write {}, or set 'language: en-GB'";
inline constexpr FindingRow british_beside_us{"{} is spelled as in Britain, and {} as in the US"};
inline constexpr FindingRow us_beside_british{"{} is spelled as in the US, and {} as in Britain"};
inline constexpr FindingRow term_forms{"{} is written {} in line {}", "write it in one way"};
inline constexpr FindingRow hyphen_for_dash{"a hyphen stands where a dash belongs",
                                            "type two hyphens, '--', for a dash between words"};
inline constexpr FindingRow spacing{"{}",
                                    "one space between words, none before a comma or full stop"};
inline constexpr Message doubled_space = "a doubled space";
inline constexpr Message doubled_spaces = "doubled spaces";
inline constexpr Message gap_with_tab = "a gap with a tab in it";
inline constexpr Message gaps_with_tabs = "gaps with tabs in them";
inline constexpr Message space_before_sign = "a space before a sign that closes";
inline constexpr Message spaces_before_signs = "spaces before signs that close";
inline constexpr FindingRow doubled_word{"'{} {}' has one word twice", "take one of them out"};

// --- the page

inline constexpr FindingRow text_size{
    "the theme sets this in {:.1f} pt",
    "10 to 12 pt are read with ease; choose a theme that keeps to them"};
inline constexpr FindingRow size_of_office{"the text is set in {:.1f} pt"};
inline constexpr FindingRow margin_of_office{"a margin of {:.2f} in"};
inline constexpr Message ask_for = "ask for it by '{}', and shorten what then does not fit";
inline constexpr FindingRow pages_of_office{"this takes {}"};
inline constexpr Message bring_to = "bring it to {}";
inline constexpr FindingRow margin_width{"a margin of {:.2f} in",
                                         "0.5 to 1 in suit every printer and every reader"};
inline constexpr FindingRow too_long{"{} too long for {}", "'quoin set' names the cheapest cuts"};
inline constexpr FindingRow many_pages{
    "this takes {}",
    "one page is the rule for a student; two are for applications to graduate school, 'stage: "
    "graduate applicant'"};
inline constexpr FindingRow said_over_and_over{
    "'{}' is said {} times",
    "say it where it is true and most telling, and use the room for something else"};
inline constexpr FindingRow not_at_a_glance{
    "a first look of {:.0f} seconds, by a model, does not reach {}",
    "fewer or shorter entries above, or their order, bring it nearer; 'quoin glance' shows the "
    "way"};
inline constexpr FindingRow page_fill{
    "the text fills {:.0f} percent of the page",
    "courses, projects, service and more bullets can fill what is left"};
inline constexpr FindingRow one_word_over{
    "this bullet is up to {} too long for {}, and its last line holds {}"};
inline constexpr Message cut_word = "cut {}";
inline constexpr Message cut_some_word = "cut a short word, or choose a shorter one";
inline constexpr FindingRow many_lines{"this bullet runs to {}"};
inline constexpr Message shorten = "{} it {}, or make two bullets of it";
inline constexpr FindingRow emphasis{
    "{} of {} words are bold, italic or underlined",
    "emphasis works where it is rare: keep it for the few figures that matter most"};
inline constexpr FindingRow two_columns{
    "this theme sets two columns, and some portals read straight across both",
    "for a portal use a theme of one column, or 'quoin set --plain'"};
inline constexpr FindingRow contrast{
    "the theme sets this in #{:02x}{:02x}{:02x}, {:.2f} to 1 against white"};
inline constexpr Message contrast_needed =
    "text of this size needs {} to 1; darken the colour in the theme";

// --- what had better not be told

inline constexpr FindingRow identity_number{
    "this looks like a Social Security number, or another by which a state knows you",
    "take it out; no employer needs it before an offer"};
inline constexpr FindingRow personal_detail{
    "this tells {}",
    "leave it out; it has no bearing on the work, and some employers must set aside a résumé that "
    "tells it"};
inline constexpr FindingRow references{"{} is taken for granted",
                                       "take the line out and use its room"};
inline constexpr FindingRow references_named{
    "{} is named as a reference",
    "keep references on a sheet of their own, for when they are asked for"};
inline constexpr FindingRow salary{"{} has no place on a résumé",
                                   "keep it for the talk about an offer"};
inline constexpr FindingRow licence_number{
    "{} looks like the number of a licence",
    "an employer looks it up with the board; on paper it serves whoever would use it in your "
    "name"};
inline constexpr FindingRow public_repository{
    "git tracks this file and sends it to {}; if the repository is public, everybody can read this "
    "{}",
    "keep the repository private, and mind that its history keeps what was taken out"};

// --- what is passed over in another language

inline constexpr Message no_wording =
    "in {} what the words say is not read: wording, degrees, places and titles of sections are for "
    "a reader of that language to judge";
inline constexpr Message no_dictionary =
    "in {} spelling is not looked at: its dictionary is not installed (Debian's package {})";
inline constexpr Message no_known_dictionary =
    "in {} spelling is not looked at: quoin knows of no dictionary";

// --- what is set aside

inline constexpr FindingRow unknown_check{"there is no check {}"};
inline constexpr Message all_are_named = "'quoin checks' names them all";
inline constexpr FindingRow accepted_twice{"{} is set aside twice, first in line {}",
                                           "keep one of them, and one reason"};
inline constexpr FindingRow idle_acceptance{"{} is accepted, and there is nothing of it",
                                            "take it out of 'accept'"};
inline constexpr Message accepted_for = "{} (accepted: {})";

// --- whose it is

inline constexpr FindingRow name_in_two_forms{"{} stands here, and {} in the heading",
                                              "write your name in one way everywhere"};
inline constexpr FindingRow name_in_address{"the address has {}, and the heading has {}",
                                            "see which of the two has the slip"};
inline constexpr FindingRow family_first{
    "{} has the family name first, as a list does; a portal reads "
    "the first word as the first name"};
inline constexpr FindingRow name_in_small_letters{"{} begins with a small letter",
                                                  "a name has its capitals, on a page before all"};
inline constexpr FindingRow borrowed_contact{"{} says that somebody else answers",
                                             "give a number and an address that are yours alone"};
inline constexpr FindingRow contact_of_another{
    "{} is not yours, and it stands on a page that goes through many hands",
    "take it out; employers ask for references when they want them"};

// --- claims

inline constexpr FindingRow too_many_years{
    "{} are claimed, and the dates below begin {} ago",
    "claim what the page bears out, or list the work that the rest of them went by with"};
inline constexpr FindingRow done_ahead{
    "{} tells as done what the page dates {}",
    "say what is planned and when, or leave it out until it is done"};
inline constexpr FindingRow wants_alone{
    "this says what you want, {}, and nothing of what the employer gets",
    "name the post and the two or three things you bring to it, or use the lines otherwise"};
inline constexpr FindingRow no_year{"{} has no year", "add a line such as 'dates: May 2026'"};
inline constexpr FindingRow so_long_ago{
    "{} ended {} years ago, and may only tell how old you are",
    "leave it out if later work says as much, or put it in a line without dates"};
inline constexpr FindingRow lapsed{"{} expired in {}",
                                   "give the new date, or take it out until it is renewed"};
inline constexpr FindingRow older_above{"{} stands above {}, which is years newer",
                                        "put the most recent first, or what the post asks for"};
inline constexpr FindingRow leaving_reason{"{} tells why you left",
                                           "leave it out; it is asked in the interview, if at all"};
inline constexpr FindingRow employers_secret{"{} looks like what an employer keeps to itself",
                                             "say what you did without what is not public"};
inline constexpr FindingRow person_in_care{
    "{} names a person who was in your care, or your employer's",
    "say how many you served, and name nobody"};

}
