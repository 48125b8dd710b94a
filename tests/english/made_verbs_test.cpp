// Verbs made of nouns and compounds, and adjectives behind a feat: right lines that look like
// slips.
#include "compiler/english/language.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <initializer_list>
#include <string>

namespace quoin::english {

TEST_CASE("right openings that look like nouns, and feats with an adjective behind them") {
    const Language language{std::filesystem::path(QUOIN_DATA_FOLDER)};
    for (const std::string& text : std::initializer_list<std::string>{
             "Hot-fill and cap 900 jars a shift",
             "Spot-check 40 invoices a week and return 3 of them",
             "Dry-run each cue with 4 operators before opening",
             "Dry-run 12 demos a term",
             "Cross-stitch 30 badges for scouts",
             "Pressure-wash decks and repaint railings",
             "Leak-test 60 fittings a day",
             "Load-test 3 servers before each release",
             "Pilot-test surveys with 20 parents",
             "Field-dress game and log 40 tags",
             "Hand-letter 60 menus a season",
             "Deep-clean fryers and filters each Sunday",
             "Bench-test pumps and record flow",
             "Sand-cast 12 cleats a week",
             "Heat-treat 40 blades a month",
             "Flame-cut plate and grind edges",
             "Plasma-cut, fit, and tack brackets",
             "Water-test hatches on 4 hulls",
             "Shelf-read 900 books a week",
             "Copy-edit and fact-check 20 stories a month",
             "Color-grade footage of 6 plays",
             "Live-mix 3 bands a night",
             "Time-stamp, label, and file 90 samples",
             "Bar-code and shelve 300 items a week",
             "Date-stamp and route mail for 4 offices",
             "Price-check 200 items a week",
             "Double-check doses with a second nurse",
             "Drop-ship 40 orders a week",
             "Bulk-load records from 9 ports",
             "Batch-process 900 images a night",
             "Machine-wash linens and press gowns",
             "Spray-finish cabinets and doors",
             "Blind-taste 12 batches a month",
             "Tag, bag, and freeze 80 specimens a week",
             "Gouge and reweld rejected seams",
             "Caulk and repaint 9 hulls a year",
             "Splice and whip 200 feet of line a week",
             "Shim and level 12 machines",
             "Swage and proof-load 40 wires a month",
             "Rivet, seal, and repaint panels",
             "Trench, bed, and backfill pipe runs",
             "Screed and trowel floors",
             "Broadcast seed and mulch banks",
             "Brand and ear-tag 90 calves",
             "Shear, skirt, and bale fleece",
             "Document learning in portfolios",
             "Chart growth of 90 oysters",
             "Film practice and cut clips for coaches",
             "Model flow in 3 culverts",
             "Survey bottom with sonar from a skiff",
             "Script and host a weekly show",
             "Ticket and tow cars with city staff",
             "Budget travel for 22 rowers",
             "Letter, set, and proof 90 posters and programs a term",
             "Cast, trim, and glaze 40 mugs and bowls a week",
             "Bind and ship 60 books and albums a month",
             "Print, fold, and mail 900 cards and flyers a term",
             "Counsel members on savings products",
             "Counsel clients on 4 loan products",
             "Counsel students in 2 dorms",
             "Host weekly coffee hour for 30 veterans",
             "Won campus funding for a quiet room, opened in Oct 2026 and full most evenings",
             "Founded a tool library, open each Saturday and busy all summer",
             "Won grant for a bus shelter, lit at night and dry most days",
             "Started a chess night, free to all and crowded every week",
             "Opened second shop, now open 7 days a week",
             "Rewrote safety plan, clear to all and in use at 3 sites",
             "Trained classifier on 18,000 recordings",
             "Trained tagger on 4,000 notes",
             "Trained scheduler with 9,000 calls",
             "Brew, filter, and keg 30 barrels a month",
             "Milk, feed, and bed 60 cows",
             "Glass and fair hulls for 3 builders",
             "Ground, faired, and polished a 31-foot pilothouse alone",
             "Groom and sanitize 9 trails",
             "Stage-manage 3 plays a year",
             "Vacuum-seal and freeze 400 portions a week",
             "Tie-dye shirts with 30 campers",
             "Jump-start, tow, and winch 20 cars a week",
             "Blow-dry and style 12 clients a day",
             "Air-dry, press, and mount 300 plants a season",
             "Freeze-dry and weigh 90 samples",
             "Sun-dry and sort 40 kg of kelp",
             "Fish-tag and release 1,240 smolts a spring",
             "Log-roll and peel 40 poles",
             "Net-mend and rig 12 seines",
             "Rope-rescue hikers with 9 volunteers",
             "Sound-check 4 rooms each night",
             "Side-load and strap 60 pallets a shift",
             "Kit and stage parts for 4 lines",
             "Program and set 3 lathes",
             "Mask and paint trim on 9 boats",
             "Ink and pull 60 prints a week",
             "Shelve and face 300 items a night",
             "Wax, buff, and seal 9 floors",
         }) {
        CAPTURE(text);
        const BulletReading reading = language.read_bullet(text);
        CHECK(reading.opening != BulletReading::Opening::no_verb);
        CHECK((reading.wrong_for_current.empty() || reading.wrong_for_ended.empty()));
        CHECK(reading.disagreements.empty());
        CHECK(language.word_slips(language.sentence(text)).empty());
    }
}

}
