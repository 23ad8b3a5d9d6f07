"""What words and letters say that a number is: its kind, its thing, whether it is the pull or the joint force. Knows
words, no numbers.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

import numpy as np

from .kinds import BY_WEIGHT, UNIT_KIND, kind_of
from .known import Known
from .patterns import same
from .values import Meaning

JOINT = frozenset(
    """joint reaction reactions jrf jr rxn hinge compression compressive shear resultant contact gelenk gelenkkraft bone
socket disc vertebra condyle""".split()
)
_ANY_CONTACT = frozenset("reaction reactions contact resultant".split())
_CONTACTS = frozenset(
    "floor ground wall seat chair rail bench hand foot hands feet step normal armrest support".split()
)
_KINDS: Mapping[str, frozenset[str]] = {
    "length": frozenset(
        "distance distances dist lever levers ma perp d dperp levier length hebelarm radius horiz away com cog "
        "centre center arm".split()
    ),
    "moment": frozenset(
        "torque torques moment moments tau turning moms mom drehmoment couple cw acw ccw clockwise anticlockwise "
        "counterclockwise turns".split()
    ),
    "mass": frozenset("mass masses".split()),
    "force": frozenset(
        "weight weights force forces pull pulls tension weighs tendon muscle reaction joint load loads gewicht "
        "kraft".split()
    ),
    "angle": frozenset("angle theta direction phi alpha beta".split()),
}
_MUSCLES = frozenset(
    "biceps bicep flexors flexor triceps deltoid delt delts quads quadriceps calf achilles tendon extensors "
    "extensor abductors abductor muscle muscles hamstrings".split()
)
_ARM = re.compile(r"(moment|lever|perp\w*|torque)[ -]*(arms?|distance|dist)|lever|\bma\b|perp|hebelarm")
_JOINT_LETTER = re.compile(r"^(R|J|JRF|R_?j(oint)?|F_?j(oint)?|JR|F_R|FR|R_?net|Rtot)(_?[xyhv])?$")
_PULL_LETTER = re.compile(r"^(F|Fm|FM|F_m|F_M|Fmus|F_mus|F_muscle)$")
_ALSO = {"tibia": ("shin", "shinbone"), "femur": ("thighbone",), "scapula": ("blade",), "pelvis": ("hipbone",)}
_FORCE_OF = re.compile(r"\b(?:force|load|push|pressure)s? (?:on|of|from|by) (?:the |her |his )?([a-z]+)")
_OF_JOINTS = frozenset("NRJVXYWM")  # as a rule the letters of contact, parts, weights and moments
_CARRIES = frozenset("carry carries bear bears push pushes".split())
_SO_MANY_TIMES = re.compile(
    r"\btimes (?:as|the|farther|further|longer|more|larger|bigger|that|its|her|his|body)\b|\btimes$"
)
_WHAT_FOR = frozenset("for alone only against hold holds balance balances because needs from due".split())
_AXES = {"level": "reaction.right", "upright": "reaction.up", "along": "reaction.along", "across": "reaction.across"}
_AXIS_WORDS = (
    ("level", re.compile(r"\bhoriz\w*|\bsideways\b|\blevel (?:part|component)\b")),
    ("upright", re.compile(r"\bvert(?:ical\w*)?\b|\b(?:up|upwards?|upright) (?:part|component)\b")),
    ("along", re.compile(r"\balong\b|\bcompress\w*|\baxial")),
    ("across", re.compile(r"\bacross\b|\bshear\w*")),
)
_SMALL = frozenset("and of the both one on with to side in at".split())


class Hints:
    """The words of one problem."""

    def __init__(self, known: Known, bone: str, pivot: str, asked: tuple[str, ...]) -> None:
        self.known, self.asked, self.asked_order = known, frozenset(asked), asked
        self.words = {
            each.name: tuple(word for word in re.findall(r"[a-zäöüß]{2,}", each.name.lower()) if word not in _SMALL)
            for each in known.first.items
        }
        self.unknown_items = frozenset(each.name for each in known.first.items if each.key in known.unknowns)
        self.pulls = self.unknown_items | {
            each.name for each in known.first.items if each.kind == "muscle" or each.multiple[1] in known.unknowns
        }
        self.muscles = frozenset(each.name for each in known.first.items if each.kind == "muscle")
        self.has_arm = any("arm" in own for own in self.words.values())
        self.pivot = frozenset(re.findall(r"[a-z]{3,}", pivot.lower())) - _SMALL
        own = frozenset(re.findall(r"[a-z]{3,}", bone.lower())) - _SMALL
        self.bone = own.union(*(_ALSO.get(word, ()) for word in own)) | self.pivot
        self._axes = {
            axis: key
            for axis, key in _AXES.items()
            if key in known.truth
            and not same(np.abs(known.truth[key]), np.abs(known.truth.get("reaction", known.truth[key])))
        }
        self._kept: dict[tuple[str, str, str], Meaning] = {}
        self._items_of: dict[str, frozenset[str]] = {}  # by key of the problem

    def of(self, words: str, name: str, unit: str) -> Meaning:
        """What is meant by these words, this letter, this unit."""
        key = (words, name, unit)
        if key not in self._kept:
            if len(self._kept) > 2000:
                self._kept.clear()
            self._kept[key] = self._of(words, name, unit)
        return self._kept[key]

    def _of(self, words: str, name: str, unit: str) -> Meaning:
        if not unit and _SO_MANY_TIMES.search(words):
            return Meaning(frozenset({"ratio"}))
        text = f"{words} {name}".lower().replace("_", " ").replace("'s", "").replace("§", "")
        said = set(re.findall(r"[a-zäöüß]+", text))
        if re.search(r"\bbody ?weight\b", text) and not re.search(r"\babove|\bover|\bhip", text):
            said -= {"body"}
        kinds = {kind for kind, vocabulary in _KINDS.items() if said & vocabulary}
        if kinds & {"force", "moment", "mass"} and "length" in kinds and not _ARM.search(text):
            kinds -= {"length"} if said & {"arm", "away", "com"} else set()
        if "arm" in said and kinds == {"length"} and not _ARM.search(text):
            kinds = set()
        if _ARM.search(text):
            kinds = {"length"}
        if said & {"component", "part", "comp"}:
            kinds = {"force"}
        items = self._items(said - self._measured_from(text), name, bool(_ARM.search(text)))
        if {*_FORCE_OF.findall(text)} & (self.bone - self.pivot):
            said |= {"joint"}
        if not name and self.about_elsewhere(words):
            return Meaning(frozenset({"moment"}), frozenset(items))
        kinds = kinds or self._kinds_of_letter(name, items)
        if unit in UNIT_KIND:
            kind = UNIT_KIND[unit]
            kinds = kinds if unit == "lb" and kinds else {"force", "mass"} if kind == "mass" or unit == "lb" else {kind}
        role = (
            self._role(said, name, kinds, items)
            if not kinds or "force" in kinds and not kinds & {"moment", "length"}
            else ""
        )
        return Meaning(frozenset(kinds), frozenset(items), role, _axis(text, name))

    def _measured_from(self, text: str) -> frozenset[str]:
        """The words of the pivot where a line measures or turns from it: "distances from the hip" name no flexor."""
        found = re.findall(r"\b(?:from|about|around|round)\s+(?:the\s+)?([a-z]{3,})", text)
        turned = re.findall(r"\b(?:moments?|torques?) (?:about|around|round) (?:the )?([a-z]+ [a-z]+|[a-z]{3,})", text)
        return frozenset(found) & self.pivot | frozenset(word for each in turned for word in each.split())

    def _items(self, said: set[str], name: str, about_arm: bool) -> set[str]:
        items: set[str] = set()
        matched: dict[str, set[str]] = {}
        letter = re.match(r"^(?:[A-Zτ]|[dxrlmtw])_?([a-zA-Z]{2,})$", name)
        tail = letter[1].lower() if letter else ""
        for item, own in self.words.items():
            for word in own:
                if len(word) >= 3 and any(
                    _alike(each, word) and (each != "arm" or word == "arm" or not self.has_arm)
                    for each in said
                    if each != "arm" or not about_arm
                ):
                    items.add(item)
                    matched.setdefault(item, set()).add(word)
                if tail and (word.startswith(tail) or tail.startswith(word)):
                    items.add(item)
        if len(self.pivot) > 1 and self.pivot <= said:  # "the left post", where another thing is the right post
            items -= {item for item, own in matched.items() if own <= self.pivot}
        items |= self._by_initial(name)
        return items - {less for less in matched for more in matched if matched[less] < matched[more]}

    def _by_initial(self, name: str) -> frozenset[str]:
        """The pull that a capital stands for, where no other thing begins with it: D for the deltoid, Bi for the
        biceps.
        """
        if name == "M" and any(kind_of(key) == "moment" for key in self.known.unknowns):
            return self.unknown_items if len(self.unknown_items) == 1 else frozenset()
        if not re.fullmatch(r"[A-Z][a-z]{0,2}", name) or name in _OF_JOINTS:
            return frozenset()
        fits = frozenset(item for item, own in self.words.items() if any(word.startswith(name.lower()) for word in own))
        return fits if len(fits) == 1 and fits <= self.pulls else frozenset()

    def _kinds_of_letter(self, name: str, items: set[str]) -> set[str]:
        if not name or name.startswith("§") or len(name) > 9 or " " in name.strip():
            return set()
        head = name[0]
        if head in "Ww" or name.startswith("Fg"):
            return {"force"}
        if head in "dxrl" and name != "drag":
            return {"length"}
        if head in "Mτ" and len(name) > 1 or name.startswith(("T", "tau")) and items and not items & self.unknown_items:
            return {"moment"}
        if head in "FPBQVHADNCESRJ" and name[:2] not in ("CW", "AC", "Dp"):
            return {"force"}
        if head == "m" and len(name) > 1 and not items & self.pulls:
            return {"mass"}
        return {"angle"} if head in "θφαβ" else set()

    def _role(self, said: set[str], name: str, kinds: set[str], items: set[str]) -> str:
        letter = name if not name.startswith("§") else ""
        carries = bool(said & self.bone and said & _CARRIES)
        if said & {"weight", "weights", "weighs", "mass"} and not (
            said & JOINT or carries or _JOINT_LETTER.match(letter)
        ):
            return ""
        if (
            said & JOINT
            and not (said & JOINT <= _ANY_CONTACT and said & _CONTACTS)
            or _JOINT_LETTER.match(letter)
            or re.match(r"^[RJ]_\w+$", letter)
            or carries
            or said & self.bone
            and not items
        ):
            return "joint"
        alone = len(self.unknown_items) == 1 and self.unknown_items <= self.muscles
        if (
            items
            and items <= self.pulls
            or said & {"muscle", "muscles"}
            or not items
            and alone
            and said & _MUSCLES
            or _PULL_LETTER.match(letter)
        ):
            return "" if items - self.pulls and said & _WHAT_FOR else "pull"
        short = re.match(r"^F_?([a-zA-Z]{1,2})$", letter)
        if short and short[1].lower() not in ("x", "y", "g", "w", "j", "r", "n", "h", "v"):
            fits = {item for item, own in self.words.items() if any(word.startswith(short[1].lower()) for word in own)}
            return "pull" if fits and fits <= self.pulls else ""
        axis = re.match(r"^([NAESHKCDOBVPQ])_?([xyhv])$", letter)
        if (
            axis
            and not items
            and any(key.startswith("reaction") for key in self.asked)
            and (
                any(word.startswith(axis[1].lower()) for word in self.pivot)
                or not any(word.startswith(axis[1].lower()) for own in self.words.values() for word in own)
            )
        ):
            return "joint"
        return ""

    def from_elsewhere(self, words: str) -> bool:
        """Whether a distance is said to begin at another point than the pivot: "7.6 cm from the wrist"."""
        found = re.findall(r"\b(?:from|beyond|past) (?:the )?([a-z]{3,})", words.lower())
        return bool(found) and not {*found} & (self.pivot | {"pivot", "hinge", "joint"})

    def is_its_part(self, key: str, meaning: Meaning) -> bool:
        """Whether a quantity is the very part, of the very thing, that words and letter say: P_x, of the line."""
        return bool(meaning.axis and meaning.items & self.item_of(key)) and key.startswith(f"*{meaning.axis} ")

    def about_elsewhere(self, words: str) -> bool:
        """Whether moments are taken about another point than the pivot: "check about the heel"."""
        found = re.findall(
            r"\b(?:about|around|round|check at) (?!twice|half|three|four|five|ten\b)(?:the )?([a-z]{3,})", words.lower()
        )
        return bool(found) and not {*found} & (self.pivot | {"pivot", "hinge", "joint", "axis"})

    def item_of(self, key: str) -> frozenset[str]:
        """The things that a key is about."""
        found = self._items_of.get(key)
        if found is None:
            tail = key.split(" ", 1)[1] if key.startswith("*") and " " in key else key.rpartition(".")[0] or key
            found = self._items_of[key] = frozenset(item for item in self.words if item in tail)
        return found

    def speaks(self, key: str, meaning: Meaning) -> bool:
        """Whether a quantity can be what is called the pull, or the joint force."""
        key = key.removeprefix(BY_WEIGHT)
        if meaning.role == "joint":
            if key.startswith(("reaction", "*reaction", "*angle reaction", "*direction reaction")):
                return True
            return bool(self.item_of(key) & self.unknown_items) and not self.muscles and not key.startswith("*sum")
        if meaning.role == "pull":
            return (
                bool(self.item_of(key) & self.pulls)
                and not key.startswith("*sum")
                or key.startswith(("*alone", "*sumpull", "*all"))
                or key in self.known.unknowns
            )
        return True

    def is_answer(self, key: str, meaning: Meaning) -> bool:
        """Whether a quantity is the very pull, or the joint force itself, that is spoken of."""
        key = key.removeprefix(BY_WEIGHT)
        if meaning.role == "joint":
            return key.startswith("reaction") and (
                not meaning.axis or meaning.axis not in self._axes or key == self._axes[meaning.axis]
            )
        if meaning.role == "pull":
            own = self.item_of(key)
            return (
                key in self.known.unknowns
                or key.startswith("*all")
                and bool(own & self.pulls)
                or key.endswith(".force")
                and bool(own & self.pulls)
            ) and (not meaning.items or bool(own & meaning.items) or key in self.known.unknowns)
        return False


def _axis(text: str, name: str) -> str:
    """The part of a force that words or the end of a letter speak of."""
    for axis, pattern in _AXIS_WORDS:
        if pattern.search(text):
            return axis
    if re.match(r"^[A-Z][A-Za-z]{0,3}_?[xhXH]$", name):
        return "level"
    return "upright" if re.match(r"^[A-Z][A-Za-z]{0,3}_?[yvYV]$", name) else ""


def _alike(said: str, word: str) -> bool:
    """Whether a word that was said is a word of a name, perhaps cut short or with an ending."""
    if (
        said == word
        or len(said) >= 4
        and said[:4] == word[:4]
        and len(word) >= 5
        and said[:4] not in ("fore", "uppe", "lowe", "back", "side", "body")
    ):
        return True
    return len(said) >= 3 and (word.startswith(said) or said.startswith(word)) or said == "arm" and word.endswith("arm")
