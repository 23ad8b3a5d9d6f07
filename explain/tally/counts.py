"""What a class's entries come to: slips by student, answers that several things explain, answers that nothing does.
Counts, and names nobody.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from ..marking.slips.slip import SlipRule
from .attempts import LAST, sorted_out, who
from .entry import Entry, Wrong


class Sort(NamedTuple):
    """A slip of the catalogue, as a tally speaks of it."""

    slip: str
    title: str
    family: str
    common: int = 1

    @property
    def weight(self) -> int:
        """How much likelier it is than a seldom one, before anything is known: a teacher's judgement, in steps of
        three.
        """
        return int(3**self.common)


class SlipCount(NamedTuple):
    """One slip. `alone` counts the students in whom nothing else explains what was found, `among` those in whom it is
    one of several explanations.

    `keys` are the quantities at which it first shows, the most frequent first; `weight` is the students again,
    shared out where several explanations remain; `first` counts the workings in which it is the first wrong line.
    """

    sort: Sort
    alone: int
    among: int
    keys: tuple[str, ...]
    weight: float = 0.0
    first: int = 0

    @property
    def students(self) -> int:
        return self.alone + self.among


class Group(NamedTuple):
    """Students with one wrong answer in common, to the last figure typed: an example of it, and how many they are.

    Where each has a variant they have the explanations in common, not the number: the example then has no value, and
    the most pairs of any of them.
    """

    wrong: Wrong
    students: int
    places: tuple[int, ...]


class Tally(NamedTuple):
    """What was counted: each student once. `further` are attempts of theirs that do not count, `strangers` what is
    nobody's that is known. `weights` are students by family of slips: one each, shared out by how common each slip is
    where
    several explanations remain; `slips` the commonest first."""

    entries: tuple[Entry, ...]
    slips: tuple[SlipCount, ...]
    several: tuple[Group, ...]
    unexplained: tuple[Group, ...]
    weights: dict[str, float]
    lines: bool
    remarks: tuple[str, ...] = ()
    further: tuple[Entry, ...] = ()
    strangers: tuple[Entry, ...] = ()

    @property
    def right(self) -> int:
        return sum(each.right for each in self.entries)

    @property
    def unread(self) -> tuple[Entry, ...]:
        return tuple(each for each in self.entries if each.trouble)

    @property
    def needs_a_person(self) -> bool:
        """Whether anything is wrong, could not be followed, was no number, or is nobody's that is known."""
        return bool(self.strangers) or any(each.to_look_at for each in self.entries)


def sorts(rules: Sequence[SlipRule]) -> dict[str, Sort]:
    """By name, every slip with its title (without slots) and family."""
    return {
        rule.SLIP: Sort(
            rule.SLIP, rule.SAYS.title.format(item=rule.SAYS.item, angle=rule.SAYS.angle), rule.FAMILY, rule.COMMON
        )
        for rule in rules
    }


def count(
    entries: Iterable[Entry],
    rules: Sequence[SlipRule],
    lines: bool,
    remarks: Sequence[str] = (),
    variants: bool = False,
    attempt: str = LAST,
) -> Tally:
    """The tally of entries; `lines` where they come from workings, `variants` where each has numbers of its own.
    Each student counts once, by one `attempt`: the first, the last or the best.
    """
    known = sorts(rules)
    found, further, strangers = sorted_out(entries, attempt)
    wrongs = [(each, wrong) for each in found for wrong in each.wrongs]
    several, unexplained = (
        (pair for pair in wrongs if len(pair[1].ways) > 1),
        (pair for pair in wrongs if not pair[1].causes),
    )
    return Tally(
        found,
        _slips(found, known),
        _groups(several, variants),
        _groups(unexplained, variants),
        _weights(found, known),
        lines,
        (*remarks, *_attempts(found, further, attempt)),
        further,
        strangers,
    )


def _attempts(found: Sequence[Entry], further: Sequence[Entry], attempt: str) -> tuple[str, ...]:
    """What is said where students handed in more than once; names nobody."""
    if not further:
        return ()
    students = len({who(each) for each in further})
    several = "1 student has" if students == 1 else f"{students:,} students have"
    return (
        f"{several} more than one attempt, {len(further) + students:,} in all: of each student the {attempt} counts.",
    )


def _slips(entries: Sequence[Entry], known: Mapping[str, Sort]) -> tuple[SlipCount, ...]:
    alone: defaultdict[str, set[object]] = defaultdict(set)
    among: defaultdict[str, set[object]] = defaultdict(set)
    keys: defaultdict[str, Counter[str]] = defaultdict(Counter)
    first: Counter[str] = Counter()
    for entry in entries:
        for wrong in entry.wrongs:
            for slip in wrong.slips:
                (alone if len(wrong.ways) == 1 else among)[slip].add(who(entry))
                keys[slip].update(key for key in _keys(wrong, slip) if key)
        if entry.wrongs and entry.wrongs[0].line:
            first.update(entry.wrongs[0].slips)
    shares = _shares(entries, known)
    out = [
        SlipCount(
            _sort(slip, known),
            len(alone[slip]),
            len(among[slip] - alone[slip]),
            tuple(key for key, _ in keys[slip].most_common()),
            round(sum(share for (_, one), share in shares.items() if one == slip), 9),
            first[slip],
        )
        for slip in {**alone, **among}
    ]
    return tuple(sorted(out, key=lambda each: (-each.alone, -each.weight, each.sort.title)))


def _sort(slip: str, known: Mapping[str, Sort]) -> Sort:
    return known.get(slip) or Sort(slip, slip.replace("-", " "), "")


def _keys(wrong: Wrong, slip: str) -> tuple[str, ...]:
    """The quantities that a slip is said to touch in one student, each once."""
    return tuple(
        dict.fromkeys(
            key for cause in wrong.causes for one, key in zip(cause.slips, cause.keys, strict=False) if one == slip
        )
    )


def _groups(pairs: Iterable[tuple[Entry, Wrong]], variants: bool) -> tuple[Group, ...]:
    found: defaultdict[object, list[tuple[Entry, Wrong]]] = defaultdict(list)
    for entry, wrong in pairs:
        found[_in_common(wrong, variants)].append((entry, wrong))
    groups = [
        Group(
            _example([wrong for _, wrong in each], variants),
            len({who(entry) for entry, _ in each}),
            tuple(dict.fromkeys(entry.place for entry, _ in each)),
        )
        for each in found.values()
    ]
    return tuple(
        sorted(groups, key=lambda each: (-each.students, each.wrong.answers, abs(each.wrong.value or 0.0), each.places))
    )


def _in_common(wrong: Wrong, variants: bool) -> object:
    """What makes two wrong answers one: the number and the line too, but with numbers of their own the explanations;
    a line that has none is alone.
    """
    if variants:
        return wrong.answers, frozenset(wrong.ways), wrong.text if wrong.line and not wrong.ways else ""
    return wrong.answers, wrong.value, wrong.text if wrong.line else "", wrong.ways


def _example(wrongs: Sequence[Wrong], variants: bool) -> Wrong:
    if not variants:
        return wrongs[0]
    causes = tuple(dict.fromkeys(cause for each in wrongs for cause in each.causes))
    return wrongs[0]._replace(causes=causes, pairs=max(each.pairs for each in wrongs), value=None)


def _shares(entries: Sequence[Entry], known: Mapping[str, Sort]) -> dict[tuple[object, str], float]:
    """How much of a student each slip has, at most one: explanations share by how common their slips are."""
    best: dict[tuple[object, str], float] = {}
    for entry in entries:
        for wrong in entry.wrongs:
            weights = {way: min(_sort(slip, known).weight for slip in way) for way in wrong.ways}
            for slip in wrong.slips:
                share = sum(weight for way, weight in weights.items() if slip in way) / sum(weights.values())
                best[who(entry), slip] = max(best.get((who(entry), slip), 0.0), share)
    return best


def _weights(entries: Sequence[Entry], known: Mapping[str, Sort]) -> dict[str, float]:
    """Students by family of slips; each counts once for a slip."""
    out: defaultdict[str, float] = defaultdict(float)
    for (_, slip), share in _shares(entries, known).items():
        out[_sort(slip, known).family] += share
    return {
        family: round(share, 9) for family, share in sorted(out.items(), key=lambda each: (-each[1], each[0])) if family
    }
