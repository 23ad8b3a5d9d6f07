"""What students may call the quantities of a problem: every key with its spellings. Knows no line."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from ..slips.account import Account, Item
from ...mechanics.letters import Letters
from ..reading.vocabulary import fold
from ..reading.words import LEADS, SMALL

Spelled = Iterator[tuple[str, Iterable[str]]]
JOINT = (
    "R J N JRF F_J F_R F_joint F_j R_J J_R N_J H_J reaction",
    "joint force",
    "joint reaction",
    "reaction force",
    "joint reaction force",
    "bone on bone force",
    "contact force",
)
TOTAL = (
    "M T tau M_net T_net M_load T_load moment torque M_total T_total tau_net tau_total M_tot T_tot",
    "total moment",
    "total torque",
    "load moment",
    "load torque",
)
LEVEL, UPRIGHT = ("x", "h", "H", "horizontal", "right"), ("y", "v", "V", "vertical", "up")
ALONG, ACROSS = ("along", "a", "n", "ax", "axial", "x"), ("across", "t", "c", "sh", "shear", "y")
ANGLES = "theta alpha phi beta angle theta_R theta_J direction".split()
HEAVY_HEADS, PULL_HEADS = "W F Fg w G F_g P wt".split(), "F T f P R N".split()
DISTANCE_HEADS, ARM_HEADS, MOMENT_HEADS = (
    "d r l x s a D L R b".split(),
    "MA ma arm lever".split(),
    "M T tau mom torque".split(),
)
ARMS = ("arm", "lever arm", "moment arm", "distance", "level distance", "perpendicular distance")
_STARTS = frozenset("We He It If In Is My No Of On Or To Up Us At As An Be By Do So Go".split())
_NO_LETTERS = frozenset(
    each for each in SMALL | LEADS | frozenset("am be do go he hi if me my no us we".split()) if len(each) > 1
)
_UNITS = frozenset(("m", "M"))  # that make a unit of c: cm
_SMALL = frozenset("and of the on in at a an".split())


class Kinds(NamedTuple):
    """The items of a problem by kind: how many there are of each tells which letters need no subscript."""

    muscles: tuple[Item, ...]
    heavy: tuple[Item, ...]
    forces: tuple[Item, ...]

    def only(self, item: Item) -> bool:
        """Whether an item is the only one of its kind: muscle, force, load, or segment with a weight."""
        return sum(each.kind == item.kind for row in self for each in row) == 1

    def called(self, item: Item) -> tuple[str, ...]:
        """An item's name, and every word of it that no other item has: the arm, beside a forearm, is the upper arm."""
        others = {word for row in self for each in row if each is not item for word in each.name.split()}
        return tuple(
            dict.fromkeys(
                (item.name, *(word for word in item.name.split() if word not in others and word not in _SMALL))
            )
        )

    @property
    def number(self) -> int:
        return sum(map(len, self))


def spellings(account: Account, letters: Letters, pivot: str, bone: str) -> dict[str, tuple[str, ...]]:
    """By key, every spelling of a quantity of this problem; none that would be taken for a small word."""
    out: dict[str, list[str]] = {key: [letter.text] for key, letter in letters.known.items()}
    kinds = Kinds(
        *(
            tuple(each for each in account.items if each.kind in wanted)
            for wanted in (("muscle",), ("weight", "load"), ("force",))
        )
    )
    for item in account.items:
        for key, spelled in _couple(item, letters) if item.kind == "couple" else _item(item, letters, kinds):
            out.setdefault(key, []).extend(spelled)
    for key, spelled in (*_joint(pivot, bone, account.bone is not None), *_whole(account)):
        out.setdefault(key, []).extend(spelled)
    worked = account.values()
    return {
        key: tuple(each for each in dict.fromkeys(spelled) if each and not _is_word(fold(each)))
        for key, spelled in out.items()
        if key in worked
    }


def _is_word(letter: str) -> bool:
    """Whether a letter would be taken for a small word where it stands in a line: "so", "The", "We"; Me and Te begin
    no line.
    """
    return letter.casefold() in _NO_LETTERS and not (
        len(letter) == 2 and letter[:1].isupper() and letter not in _STARTS
    )


def _with(heads: Iterable[str], subs: Iterable[str], form: str = "{}_{}") -> list[str]:
    known = tuple(subs)
    return [form.format(head, sub) for head in heads for sub in known]


def _whole(account: Account) -> Spelled:
    """What belongs to no item."""
    yield "total", [*TOTAL[0].split(), *TOTAL[1:]]
    yield "*weights", ("W", "W_total", "W_tot", "W_t", "total weight", "weight", "weights")
    yield "g", ("g",)
    for key in account.unknowns:
        yield key, ("x", *(ANGLES + ["a"] if key.startswith("*angle ") else ()))


# ---------------------------------------------------------------------- one item
def subscripts(item: Item, letters: Letters, kinds: Kinds) -> tuple[str, ...]:
    """What may stand below a letter for an item: its letter in the class, parts of its name, a number."""
    words = [each for each in re.findall(r"[^\W_]+", item.name) if each.casefold() not in _SMALL] or [item.name]
    sub, first, last = letters.sub[item.name], words[0], words[-1]
    out = [sub, sub.lower(), first, first[:2], first[:3], first[:4], last, last[:3], first[0], first[0].upper()]
    out += ["".join(word[0] for word in words), "".join(words)]
    if kinds.only(item):
        limb = "arm" if "arm" in item.name else "leg" if item.name in ("shank", "thigh", "leg") else "segment"
        out += {
            "muscle": ["muscle", "m", "M", "mus"],
            "load": "L load l w W o obj".split(),
            "weight": ["s", "seg", "limb", limb],
        }.get(item.kind, [])
    return tuple(dict.fromkeys([*out, *map(str, range(1, kinds.number + 1))]))


def _couple(item: Item, letters: Letters) -> Spelled:
    sub = letters.sub[item.name]
    yield item.key, [*_with(("M", "T", "C", "tau"), (sub, sub.lower(), item.name)), "C", item.name]


def _item(item: Item, letters: Letters, kinds: Kinds) -> Spelled:
    name, subs = item.name, subscripts(item, letters, kinds)
    yield item.key, _size(item, subs, kinds)
    if item.mass:
        yield item.mass, [*_with(("m",), subs), "m", f"mass of {name}", f"{name} mass", f"mass of the {name}"]
    centred = bool(item.legs) and item.legs[-1].key.endswith(".com")
    distances = [
        *_with(DISTANCE_HEADS, subs),
        *(_with(("c",), (sub for sub in subs if sub not in _UNITS)) if centred else []),
    ]
    for key in [leg.key for leg in item.legs[-1:]] + ([item.arm] if item.arm and not item.arm.startswith("*") else []):
        yield key, [*distances, *"d x r l s L distance".split()]
    arms = [f"{words} of {called}" for called in kinds.called(item) for words in ARMS]
    yield f"*arm {name}", [*distances, *_with(ARM_HEADS, subs), *"d r l x h b".split(), *arms, f"{name} arm"]
    moments = [
        form.format(word, called)
        for word in ("moment", "torque")
        for called in kinds.called(item)
        for form in ("{0} of {1}", "{1} {0}")
    ]
    yield (
        f"*moment {name}",
        [
            *_with(MOMENT_HEADS, subs),
            *_with(("M",), (sub for sub in subs if sub[0] in "ui"), "{}{}"),
            *kinds.called(item),
            *moments,
        ],
    )
    yield from _parts(item, subs, item.kind == "muscle" and kinds.only(item))


def _size(item: Item, subs: Sequence[str], kinds: Kinds) -> list[str]:
    """The letters and words of a force."""
    heavy, name = item.kind in ("weight", "load"), item.name
    said = [
        form.format(word, called)
        for word in ("pull", "force", "weight")
        for called in kinds.called(item)
        for form in ("{0} of {1}", "{0} of the {1}", "{1} {0}")
    ]
    out = [
        *_with(HEAVY_HEADS if heavy else PULL_HEADS, subs),
        name,
        *said,
        *(sub for sub in subs if len(sub) > 1),
        *(subs[:1] if subs[0].isupper() else ()),
    ]
    if kinds.only(item):
        out += {
            "muscle": ["F", "Fm", "F_muscle", "muscle force", "B", "P", "T", "Q", "muscle", "tension", "f"],
            "load": ["W", "L", "load", "P"],
            "force": ["P", "T", "N", "F"],
        }.get(item.kind, [])
    return out + ["W", "w", "Fg", "weight", "load", "L", "F_g", "P", "G"] if heavy and len(kinds.heavy) == 1 else out


def _parts(item: Item, subs: Sequence[str], only: bool) -> Spelled:
    """The parts of a force to the side and up, and the part that turns."""
    long = [sub for sub in subs if len(sub) > 1 or sub.isupper()]
    for side, ends in (("*level", LEVEL), ("*upright", UPRIGHT)):
        spelled = [*_with(subs, ends[:3], "F_{}{}"), *_with(subs, ends[:3], "F_{},{}"), *_with(long, ends[:3])]
        if only:
            spelled += [f"x_{ends[0]}", *_with(("F",), ends), *_with(("B", "T"), ends[:2]), ends[2]]
        yield f"{side} {item.name}", spelled
    turning = [*_with(subs, ("t", "⊥", "perp"), "F_{}{}"), *_with(("F", "W"), subs, "{}_{}⊥")]
    yield f"*turning {item.name}", [*turning, *("F_t F_perp F_⊥ F_n F_rot F_y".split() if only else ())]


# ---------------------------------------------------------------------- the joint
def _joint(pivot: str, bone: str, sloping: bool) -> Spelled:
    subs = [
        pivot,
        pivot[:1],
        pivot[:1].upper(),
        *([bone, bone[:1].upper()] if bone else []),
        "j",
        "J",
        "joint",
        "R",
        "r",
    ]
    yield "reaction", [*JOINT[0].split(), *JOINT[1:], *_with(("F", "R", "J"), subs)]
    heads = ("R", "J", "N", "H", "F_J", "F_R", "F_j", "JRF", "F_joint", *_with(("F", "R", "J"), subs))
    sides = {
        "reaction.right": LEVEL,
        "reaction.up": UPRIGHT,
        **({"reaction.along": ALONG, "reaction.across": ACROSS} if sloping else {}),
    }
    for key, ends in sides.items():
        spelled = [f"{head}{end}" if "_" in head else f"{head}_{end}" for head in heads for end in ends[:4]]
        yield key, [*spelled, *_with(("F",), ends[:2]), ends[2]]
    yield "*angle reaction", [*ANGLES, "angle of R"]
