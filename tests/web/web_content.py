"""A tiny content folder whose sums can be done in the head, and texts that change.

2 % of 1, 2 and 4 kg of resin is 20, 40 and 80 g of catalyst.
At 1.25 kg to the litre, 40 g of it are 32 ml.
"""

import re
from pathlib import Path

from web_page import Page

# Where its first three questions are.
FIRST, CHAIN, DRUM = "/questions/first-dose", "/questions/dose-chain", "/questions/drum-dose"

COMPETENCIES = """
[[competency]]
slug = "safety"
title = "Working safely"
safety_critical = true
signer_must_hold = true
part = "guard"
must_steps = ["One.", "Two.", "Three.", "Four.", "Five."]
why = ["Why?"]
[[competency.skill]]
slug = "first-dose"
title = "Working out a dose"
weight = 1

[[competency]]
slug = "mixing"
title = "Mixing a batch"
safety_critical = false
signer_must_hold = false
part = "bucket"
must_steps = ["One.", "Two.", "Three.", "Four.", "Five."]
why = ["Why?"]
[[competency.skill]]
slug = "dose"
title = "Working out the catalyst"
weight = 2
"""

#: What no lesson can be served without: the thresholds that the records judge by.
RULES = "".join(
    f'[rules.{name}]\nvalue = {value}\nreason = "So that there is one."\n'
    for name, value in {
        "fading_back_at_wrong": 2,
        "fading_skipped_at_right": 2,
        "stuck_after": 2,
        "gelled_after": 3,
        "set_days": 3,
        "counted_tries_a_day": 2,
        "first_gaps_days": [1, 2, 4, 7, 7],
        "cured_looks": [7, 12, 16],
        "cured_wrongs": [0, 1, 2],
        "run_ends_at_wrong": 3,
        "new_run_due_days": 1,
        "numberless_tries": 3,
        "due_again_rights": 1,
        "due_again_right_days": 2,
        "recall_wanted": 0.9,
        "longest_gap_days": 120,
        "believed_late_days": 7,
        "sitting_questions": 12,
        "sitting_minutes": 10,
        "break_minutes": 5,
        "returns_after": 3,
        "same_numbers_after_days": 90,
        "numberless_after_days": 14,
        "refresher_recall": 0.85,
        "refresher_recall_if_safety_critical": 0.9,
        "gone_recall": 0.6,
        "refresher_questions": 15,
        "refresher_last_open_days": 28,
        "refresher_days": [-28, -10, 17],
        "season_ahead_days": 400,
        "compared_answers": 200,
        "compared_gap": 0.1,
        "unused_days": 180,
        "unused_days_if_safety_critical": 90,
        "use_noted_within_days": 30,
    }.items()
)

CAUTIONS = """
[[caution]]
slug = "eyes"
title = "Eyes first"
text = "Goggles on before the cap comes off."
source = "common practice"
"""

#: Three sets of numbers, so that all of them can be seen.
FIRST_DOSE = """
```question
id = "first-dose"
title = "The first dose"
calculate = "catalyst_by_mass"
ask = "You mix {resin_kg} of resin at {percent}. What does the catalyst weigh?"
skill = "first-dose"
line = "mass"
unit = "g"
tolerance = "1 %"
given.resin_kg = [1, 2, 4]
given.percent = 2
[[slips]]
name = "ten times the dose"
cue = "Is two in a hundred the same as two in ten?"
given.percent = {times = 10}
```
"""

#: One set of numbers: 2 kg at 2 % is 40 g, which is 32 ml.
DOSE_CHAIN = """
```question
id = "dose-chain"
title = "From the bucket to the syringe"
calculate = "catalyst_by_mass"
ask = "In the bucket are {resin_kg} of resin. The catalyst has {catalyst_kg_per_l}."
given.resin_kg = 2
given.percent = 2
given.catalyst_kg_per_l = 1.25
[[asks]]
ask = "What does {percent} of catalyst weigh?"
line = "mass"
unit = "g"
tolerance = "1 %"
skill = "dose"
[[asks]]
ask = "How much is that in the syringe?"
line = "volume"
unit = "ml"
tolerance = "1 %"
skill = "dose"
safe = [0.5, 1.5]
[[slips]]
name = "a tenth of the dose"
cue = "How many grams to a hundred are two per cent?"
on = "mass"
given.percent = {times = 0.1}
[[slips]]
name = "multiplied where it should be divided"
cue = "Is a millilitre of it heavier than a gram, or lighter?"
on = "volume"
line.volume = {times = 1.5625}
```
"""

#: Forty sets of numbers.
DRUM_DOSE = """
```question
id = "drum-dose"
title = "A dose for a drum"
calculate = "catalyst_by_mass"
ask = "A drum holds {resin_kg}, and takes {percent}. What does the catalyst weigh?"
skill = "dose"
line = "mass"
unit = "g"
tolerance = "1 %"
given.resin_kg = {from = 0.5, to = 20, step = 0.5}
given.percent = 2
```
"""

#: 2 kg at 2 %; both slips lead to 400 g, so that nobody can tell which it was.
TWO_SLIPS = """
```question
id = "two-slips"
title = "Two ways to go wrong"
calculate = "catalyst_by_mass"
ask = "You mix {resin_kg} at {percent}. What does the catalyst weigh?"
skill = "dose"
line = "mass"
unit = "g"
tolerance = "1 %"
given.resin_kg = 2
given.percent = 2
[[slips]]
name = "ten times the dose"
cue = "Is two in a hundred the same as two in ten?"
given.percent = {times = 10}
[[slips]]
name = "ten times the resin"
cue = "How many buckets did you fill?"
given.resin_kg = {times = 10}
```
"""

#: 100 mm of bandage over 50 mm of tape leaves 25 mm each side, and 20 mm once it is 5 mm off.
BARE_CHAIN = """
```question
id = "bare-chain"
title = "Tape that wandered"
calculate = "bare_board"
ask = "A {bandage_mm} bandage over {tape_mm} tape, {off_centre_mm} off."
given.bandage_mm = 100
given.tape_mm = 50
given.off_centre_mm = 5
[[asks]]
ask = "How much shows on each side while it is centred?"
line = "side"
unit = "mm"
tolerance = "0.5 mm"
skill = "dose"
[[asks]]
ask = "How much shows on the narrow side?"
line = "narrow"
unit = "mm"
tolerance = "0.5 mm"
skill = "dose"
```
"""

SAFETY = """\
+++
slug = "before-the-lid"
title = "Before the lid"
competency = "safety"
minutes = 5
order = 1
scenario = "The tins are in the van."
cautions = ["eyes"]
+++

Goggles on.
"""

MIXING = """\
+++
slug = "mixing"
title = "Mixing a batch"
competency = "mixing"
minutes = 10
order = 2
scenario = "The bucket stands ready."
cautions = ["eyes"]
+++

Stir it slowly.

```worked
title = "One bucket"
calculate = "catalyst_by_mass"
text = "{resin_kg} of resin at {percent}."
given.resin_kg = 3
given.percent = 2
```
"""

#: Three sets of numbers: at 2.5 m of run, one in 25, 50 and 100 are 100, 50 and 25 mm.
ROOF_FALL = """
```question
id = "roof-fall"
title = "How far the shed drops"
calculate = "fall_drop"
ask = "Water runs {run_m}, one in {ratio}. How much lower is the edge?"
line = "drop"
unit = "mm"
tolerance = "1 mm"
given.run_m = {plan = "fall.run_m"}
given.ratio = [25, 50, 100]
[[slips]]
name = "half the run"
cue = "Where does the water start?"
given.run_m = {times = 0.5}
```
"""

#: One set of numbers: 10 m² at 0.5 kg/m² are 5 kg, which are 4 L at 1.25 kg to the litre.
ROOF_COAT = """
```question
id = "roof-coat"
title = "Topcoat for the shed"
calculate = "topcoat_litres"
ask = "The deck has {area_m2}, and takes {kg_per_m2}. A litre weighs {topcoat_kg_per_l}."
given.area_m2 = {plan = "deck.area_m2"}
given.kg_per_m2 = 0.5
given.topcoat_kg_per_l = 1.25
[[asks]]
ask = "How much topcoat is that?"
line = "topcoat.mass"
unit = "kg"
tolerance = "1 %"
[[asks]]
ask = "How many litres is it?"
line = "litres"
unit = "L"
tolerance = "1 %"
skill = "dose"
safe = [0.5, 1.5]
[[slips]]
name = "a kilogram on every square metre"
cue = "How thick did you mean to lay it?"
on = "topcoat.mass"
given.kg_per_m2 = 1.0
[[slips]]
name = "the kilograms read off as litres"
cue = "Is a litre heavier than a kilogram, or lighter?"
on = "litres"
answer = "topcoat.mass"
```
"""

#: For roofs with a pipe.
ROOF_PIPE = """
```question
id = "roof-pipe"
title = "A collar for the pipe"
calculate = "pipe_collar"
ask = "A pipe of {diameter_mm}, the collar {up_mm} up it. How long is the strip?"
line = "around"
unit = "mm"
tolerance = "1 %"
given.diameter_mm = {plan = "openings.pipe_mm"}
given.up_mm = {plan = "openings.pipe_up_mm"}
[[slips]]
name = "half the diameter"
cue = "Did you measure across the pipe?"
given.diameter_mm = {times = 0.5}
```
"""

ROOF_QUESTIONS = """\
+++
slug = "roof-questions"
title = "Practise on this roof"
+++
"""

LESSONS = {
    "01-safety.md": SAFETY + FIRST_DOSE,
    "02-mixing.md": MIXING + DOSE_CHAIN + DRUM_DOSE + BARE_CHAIN + TWO_SLIPS,
}


def write_content(folder: Path, **lessons: str) -> Path:
    """Return the folder, with the lessons as they stand here but for those given: safety, mixing.

    A lesson given as nothing is left out. `roofs` are other questions on roofs.
    """
    on_roofs = lessons.get("roofs", ROOF_FALL + ROOF_COAT + ROOF_PIPE)
    texts = {**LESSONS}
    for name, file in (("safety", "01-safety.md"), ("mixing", "02-mixing.md")):
        texts[file] = lessons.get(name, texts[file])
    (folder / "lessons").mkdir(parents=True, exist_ok=True)
    (folder / "competencies.toml").write_text(COMPETENCIES + RULES, "utf-8")
    (folder / "cautions.toml").write_text(CAUTIONS, "utf-8")
    (folder / "stock.toml").write_text("", "utf-8")
    (folder / "roof-questions.md").write_text(ROOF_QUESTIONS + on_roofs, "utf-8")
    for file, text in texts.items():
        if text:
            (folder / "lessons" / file).write_text(text, "utf-8")
    return folder


def right_grams(page: Page) -> str:
    """Return what 2 % of a question's resin weighs: 20 g to each kilogram."""
    found = re.search(r"([\d.]+) kg", page.question)
    assert found
    return f"{20 * float(found[1]):g}"
