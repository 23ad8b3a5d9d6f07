"""What is known of people's arms, muscles, segments and joints: ranges with their sources. It informs and never judges
an answer.

The ranges are read from `data/muscles` and `data/segments/mass-shares.csv`; each row there names where it comes from.
Where a muscle, a joint or a segment is not among them, there is nothing to say.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import NamedTuple

from ..document.english import listed, the
from .segment_tables import canonical, com_span, plain_name


class Note(NamedTuple):
    """One sentence about a value, the source of the range in words, whether the value is within the range, whose it is
    and what,
    and whether it is worth telling where it is within."""

    says: str
    source: str
    inside: bool
    of: tuple[str, str]
    telling: bool = False


class Measure(NamedTuple):
    """The unit that a class reads values in: its name, how large it is in the unit of the ranges, and with how many
    decimals a range is written in it.
    """

    name: str
    size: float = 1.0
    places: int = 0


NEWTON, POUND = Measure("N"), Measure("lb", 4.4482216152605)  # 1 lbf: international pound, standard gravity
CENTIMETRE, INCH = Measure("cm", places=1), Measure("in", 2.54, 2)
NEWTON_METRE, FOOT_POUND = Measure("N·m"), Measure("ft·lb", 0.3048 * 4.4482216152605)
NEWTON_PER_CM2 = Measure("N/cm²")
_CENTRAL = (40.0, 60.0)  # per cent of the length: common practice, no source
_ENDINGS = (" joint", " joints", " axis", " centre", " center", " disc")
_INCISORS = ("incisor", "incisors", "front tooth", "front teeth")


def arm_note(muscle_name: str, joint_name: str, arm_m: float, measure: Measure = CENTIMETRE) -> Note | None:
    """How a moment arm (metres) compares with those found in adults."""
    joint = _joint(joint_name)
    muscle = _muscle(muscle_name) or _muscle(f"{joint} {muscle_name}")
    row = next(
        (each for each in _rows("muscles/moment-arms") if (each["muscle"], each["joint"]) == (muscle, joint)), None
    )
    if row is None or not muscle:
        return None
    low, high, arm = float(row["low_mm"]) / 10, float(row["high_mm"]) / 10, abs(arm_m) * 100
    said, (least, most) = _read(arm, measure, low, high)
    found = f"the {least} to {most} found for the {muscle} at the {joint} in adults"
    if _within(low, arm, high):
        return Note(
            f"A moment arm of {said} is within {found}.",
            row["source"],
            True,
            (muscle_name, "moment arm"),
        )
    size = "shorter" if arm < low else "longer"
    return Note(
        f"A moment arm of {said} is {size} than {found}: is the unit right, and is it this distance that was meant?",
        row["source"],
        False,
        (muscle_name, "moment arm"),
    )


def muscle_force_note(muscle_name: str, force_N: float, measure: Measure = NEWTON) -> Note | None:
    """How a pull (newtons, not negative) compares with the greatest that models of the muscle allow."""
    row = _row("muscles/force-limits", "muscle", _muscle(muscle_name))
    if row is None or force_N < 0:
        return None
    low, high = float(row["low_N"]), float(row["high_N"])
    said, (least, largest) = _read(force_N, measure, low, high)
    most = largest if low == high else f"{least} to {largest}"
    if said.endswith(POUND.name):
        most += f" ({low:.0f} N)" if low == high else f" ({low:.0f} to {high:.0f} N)"
    models = f"models of the {row['muscle']} ({row['counted']}) allow, at most {most}"
    pull = f"A pull of {said} is"
    if _within(0, force_N, low):
        return Note(f"{pull} within what {models}.", row["source"], True, (muscle_name, "pull"), True)
    if _within(low, force_N, high):
        return Note(
            f"{pull} between what the weaker and what the stronger {models}.",
            row["source"],
            True,
            (muscle_name, "pull"),
            True,
        )
    so = "other muscles would have to help" if row["counted"].endswith("alone") else "no one could hold it"
    return Note(
        f"{pull} larger than {models}: statically right, but {so}.", row["source"], False, (muscle_name, "pull"), True
    )


def segment_mass_note(segment_name: str, share_percent: float) -> Note | None:
    """How a segment's mass, in per cent of the body's, compares with the published tables."""
    row = _row("segments/mass-shares", "segment", canonical(segment_name))
    if row is None:
        return None
    low, high = float(row["low_percent"]), float(row["high_percent"])
    inside = _within(low, share_percent, high)
    where = "within" if inside else "outside"
    return Note(
        f"{_three(share_percent, low, high)} % of the body mass is {where} the {row['low_percent']} to "
        f"{row['high_percent']} % "
        f"that published tables give for the {plain_name(segment_name)}.",
        row["source"],
        inside,
        (segment_name, "mass"),
    )


def com_note(segment_name: str, share_percent: float) -> Note | None:
    """How a centre of mass, in per cent of the segment's length from its near end, compares with the published
    tables.
    """
    span = com_span(segment_name)
    if span is None:
        return None
    low, high = math.floor(min(span[0], _CENTRAL[0])), math.ceil(max(span[1], _CENTRAL[1]))
    inside = _within(low, share_percent, high)
    where = "within" if inside else "outside"
    end = "." if inside else ": is the unit right, and is it measured from the near end?"
    return Note(
        f"The centre of mass at {_three(share_percent, low, high)} % of the length is {where} the "
        f"{low} to {high} % usual for the {plain_name(segment_name)}{end}",
        "the spread of Winter, de Leva, Clauser and Plagenhoef, and at least 40 to 60 % (common practice, no source)",
        inside,
        (segment_name, "centre of mass"),
    )


def joint_moment_note(
    joint_name: str, moment_Nm: float, word: str = "moment", measure: Measure = NEWTON_METRE
) -> Note | None:
    """How a joint's moment (newton metres, either sense) compares with what an adult can do."""
    row = _row("muscles/joint-limits", "joint", _joint(joint_name))
    if row is None:
        return None
    most, moment = float(row["moment_N_m"]), abs(moment_Nm)
    if not moment:
        return None
    said, (limit,) = _read(moment, measure, most)
    can = f"the roughly {limit} that a strong adult reaches at the {row['joint']} when {row['effort']}"
    if _within(0, moment, most):
        return Note(f"A {word} of {said} is within {can}.", row["source"], True, (joint_name, "moment"))
    return Note(
        f"A {word} of {said} is larger than {can}: statically right, but no one could hold it. Are the units right?",
        row["source"],
        False,
        (joint_name, "moment"),
    )


def hip_load_note(joint_name: str, reaction_N: float, body_weight_N: float) -> Note | None:
    """The hip's load as body weights; silent below one, where nobody stands on that leg alone."""
    if _joint(joint_name) != "hip" or body_weight_N <= 0 or reaction_N < body_weight_N:
        return None
    low, high, source = _load("hip on one leg")
    times = reaction_N / body_weight_N
    usual = f"the {low:.0f} to {high:.0f} found in slow or quiet standing on one leg"
    where = "within" if _within(low, times, high) else "less than" if times < low else "more than"
    return Note(
        f"The hip carries {_three(times, low, high)} times the body weight, {where} {usual}.",
        source,
        where == "within",
        (joint_name, "load"),
        True,
    )


def disc_note(joint_name: str, reaction_N: float, measure: Measure = NEWTON) -> Note | None:
    """The push on a disc of the lower back (newtons along the trunk) beside the two limits of a lifting guide;
    silent of a pull.
    """
    if _joint(joint_name) != "lower back" or reaction_N < 0:
        return None
    low, high, source = _load("disc")
    load = reaction_N
    said, (action, limit) = _read(load, measure, low, high)
    where = "below both" if load <= low else "between the two" if load <= high else "above both"
    return Note(
        f"The disc is pressed with {said} along the trunk, {where} limits of a lifting guide of 1981 for pressing, "
        f"{action} {limit.partition(' ')[2]} for action and {limit} at most. A sum like this one decides nothing "
        "about lifting.",
        source,
        load <= low,
        (joint_name, "load"),
        True,
    )


def bite_note(joint_name: str, force_name: str, force_N: float, measure: Measure = NEWTON) -> Note | None:
    """How a bite (newtons, the push of what is bitten on) compares with the greatest measured.

    A force named after incisors or front teeth is compared with theirs, any other with the molars'.
    """
    if _joint(joint_name) != "jaw" or force_N < 0:
        return None
    teeth = "incisors" if plain_name(force_name) in _INCISORS else "molars"
    low, high, source = _load(f"bite with the {teeth}")
    said, (least, most) = _read(force_N, measure, low, high)
    bite = f"A bite of {said} is"
    measured = f"the greatest bites measured on the {teeth}, {least} to {most} in different groups of adults"
    if _within(0, force_N, high):
        return Note(
            f"{bite} {'among' if _within(low, force_N, high) else 'less than'} {measured}.",
            source,
            True,
            (force_name, "bite"),
            True,
        )
    return Note(
        f"{bite} larger than {measured}: statically right, but no one could hold it.",
        source,
        False,
        (force_name, "bite"),
        True,
    )


def stress_note(muscle_names: Sequence[str], stress_N_per_cm2: float, measure: Measure = NEWTON_PER_CM2) -> Note | None:
    """How a muscle's pull per area compares with what was measured, and with what models assume."""
    if stress_N_per_cm2 < 0:
        return None
    _, measured, source = _load("muscle stress measured")
    _, modelled, models = _load("muscle stress in models")
    owners = listed([the(name) for name in muscle_names])
    said, ends = _read(stress_N_per_cm2, measure, measured, modelled)
    unit = said.partition(" ")[2]
    most, assumed = (
        f"{end.partition(' ')[0]} {unit}" + ("" if unit == NEWTON_PER_CM2.name else f" ({limit:.0f} N/cm²)")
        for end, limit in zip(ends, (measured, modelled), strict=True)
    )
    pull = f"A stress of {said} in {owners} is"
    if _within(0, stress_N_per_cm2, measured):
        return Note(
            f"{pull} within what is reported for human muscle, up to {most}.",
            source,
            True,
            (muscle_names[0], "stress"),
            True,
        )
    if _within(0, stress_N_per_cm2, modelled):
        return Note(
            f"{pull} more than the {most} reported for human muscle, and within the {assumed} that some models assume.",
            f"{source}; {models}",
            False,
            (muscle_names[0], "stress"),
            True,
        )
    return Note(
        f"{pull} larger than any model assumes, {assumed}: statically right, but no one could hold it. "
        "Is the area right?",
        models,
        False,
        (muscle_names[0], "stress"),
        True,
    )


def _within(low: float, value: float, high: float) -> bool:
    """Whether a value lies in a range, ends included, whatever the last binary digit does."""
    return low - 1e-9 * high <= value <= high * (1 + 1e-9)


def _three(value: float, *limits: float) -> str:
    """Three figures, or as many as show on which side of the limits it lies; without an exponent."""
    if not value:
        return "0"
    first = 2 - math.floor(math.log10(abs(value)))
    for places in range(first, first + 6):
        text = f"{round(value, places):.{max(places, 0)}f}"
        if all(_side(float(text), limit) == _side(value, limit) for limit in limits):
            break
    return text


def _read(value: float, measure: Measure, *limits: float) -> tuple[str, tuple[str, ...]]:
    """A value and the ends of its range as a class reads them, with the unit; in the unit of the range where the
    figures would not show on which side the value lies. Of a range only the last end has the unit.
    """
    ends = [f"{each / measure.size:.{measure.places}f}" for each in limits]
    own = [float(each) for each in ends]
    scaled = value / measure.size
    if measure.size != 1.0 and [_side(scaled, each) for each in own] != [_side(value, each) for each in limits]:
        metric = {INCH: CENTIMETRE, POUND: NEWTON, FOOT_POUND: NEWTON_METRE}.get(measure, NEWTON_PER_CM2)
        return _read(value, metric, *limits)
    shown = f"{_three(scaled, *(own if measure.size != 1.0 else limits))} {measure.name}"
    return shown, (*ends[:-1], f"{ends[-1]} {measure.name}")


def _side(value: float, limit: float) -> int:
    """Below a limit, on it, or above it."""
    return 0 if abs(value - limit) <= 1e-9 * limit else 1 if value > limit else -1


def _muscle(name: str) -> str:
    row = _row("muscles/names", "name", plain_name(name))
    return row["stands_for"] if row else ""


def _joint(name: str) -> str:
    plain = plain_name(name)
    for said in (plain, *(plain.removesuffix(ending) for ending in _ENDINGS if plain.endswith(ending))):
        row = _row("muscles/joint-names", "name", said)
        if row:
            return row["stands_for"]
    return ""


def _load(quantity: str) -> tuple[float, float, str]:
    row = next(each for each in _rows("muscles/joint-loads") if each["quantity"] == quantity)
    return float(row["low"]), float(row["high"]), row["source"]


def _row(table: str, column: str, wanted: str) -> Mapping[str, str] | None:
    return next((each for each in _rows(table) if wanted and each[column] == wanted), None)


@cache
def _rows(table: str) -> tuple[Mapping[str, str], ...]:
    import csv

    with (Path(__file__).parent / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        return tuple(csv.DictReader(file))
