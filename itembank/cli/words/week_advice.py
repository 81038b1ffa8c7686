"""What to type to get further with a week, by the matter of an error or a remark."""

from __future__ import annotations

from collections.abc import Mapping

from itembank.cli.words.advice_given import Advice

WEEK_ADVICE: Mapping[str, Advice] = {
    "lesson closed": Advice("Name a lesson to come with --only."),
    "no lessons from then": Advice("Write --from {next}."),
    "no room in a starter": Advice("Write --questions to have more, or pin fewer."),
    "not asked there": Advice("The plan lists what each lesson asks."),
    "pack not as planned": Advice("To make it anew: --plan {path} --only {day} --replace"),
    "packs there": Advice("Add --replace to put new ones there."),
    "plan there": Advice(
        "Build from it with --plan {path} --replace, or plan anew with --replace: what you "
        "pinned or banned stays."
    ),
    "too few questions": Advice(
        "Write some (‘itembank bank add’), or leave it out (--ban {topic})."
    ),
}
