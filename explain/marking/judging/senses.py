"""Judges directions: words for up, down, left and right beside a joint force that is right in size, its angle, and
the signs of components.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import numpy as np

from .answers import CLOSE, Answers
from .hints import JOINT
from .state import State
from .values import Claim, Suspect

_NO_DIRECTION = re.compile(
    r"right[- ](?:hand|angle|side)\w*|all right|left[- ](?:hand|over)|left (?:of|side)|right (?:of|side)|make[s]? "
    r"up|add\w* up|set up|up to|held up|straight down|from straight|given up"
    r"|hold\w* up|left leg|right leg|(?:not|n't) (?:up|down)|up (?:plus|positive|is)|down "
    r"(?:plus|positive)|(?:up|down|right|left)\s*=(?:\s*(?:up|down|right|left)\s*:)?"
    r"|(?:up|down|left|right)(?:ward)?s? (?:forces?|as)|come[s]? up|work\w* down"
)
_WAYS = re.compile(r"\b(up|down|left|right)(?:wards?)?\b")
_SLOPE = re.compile(r"\b(above|below)\s+(?:the\s+)?(?:horizontal|level)")
_NEITHER = re.compile(r"opposite|equal and|newton'?s third|cw|clockwise")
_NOT_JOINT = re.compile(r"muscle|pull|cable|rope|direction of|bone|segment|arm is|held|leans?|tendon")
_RESTS = re.compile(r"(?:depends|based|rests?|works?|goes?|act(?:s|ing)? straight) on")
_ON = re.compile(r"\b(?:on|against) (?:the |his |her |their |its |a )?([a-z]+)")
_PUSHED = re.compile(
    r"\b(?:push|press|shove|pull|squeeze|load|drive)(?:es|s|ed|ing)? (?:the |his |her |their |its )([a-z]+)"
)
_TAKES = re.compile(r"\b([a-z]+) (?:gets|takes|feels|carries|receives|bears|has to carry)\b")
_ACTS = re.compile(
    r"\b([a-z]+)(?:'s)? (?:has to |must |needs to |therefore |then |thus |is |gets )*(?:push|press|force|pull|act)"
)
_FOR_A_FORCE = re.compile(r"\blet\b|\bcall\b|\bforces? (?:up)?on\b|\b(?:load|push|pressure) on\b")
_ONE_ON_OTHER = re.compile(r"^\W*(?:force |push )?(?:of )?(?:the )?([a-z]+) on (?:the )?[a-z ]+[:=]")
_OPEN = frozenset(("each", "top", "both", "average", "the"))
SLIPS = ["reaction-wrong-sense", "reaction-on-other-body", "wrong-quadrant", "sign-of-a-term"]
_OPPOSITE = ({"up", "down"}, {"left", "right"})


class Senses:
    """The directions of one pass."""

    def __init__(self, state: State, answers: Answers) -> None:
        self.state, self.known, self.hints, self.answers = state, state.known, state.hints, answers
        self._on_bone: bool | None = None
        items = self.known.first.items
        self.bone = self.hints.bone - self.hints.pivot
        bones = [key.removesuffix(".length") for key in self.known.data if key.endswith(".length")]
        self.segments = frozenset(
            word for each in items if each.name not in self.hints.muscles for word in self.hints.words[each.name]
        ) | {word for name in bones for word in re.findall(r"[a-z]{3,}", name.lower())} - {"and", "the"}

    def judge(self) -> None:
        """Accuse the first line whose direction is not that of the force that it names."""
        first = min((each.line for each in self.state.guilty()), default=10**6)
        found = next(self._wrong_signs(first), None) or next(self._wrong_words(first), None)
        if found is not None:
            claim, slips = found
            place = self.state.suspect(
                Suspect(claim.line, slips, "", True, "which way", deps=claim.value.deps, state="guilty", sticky=True),
                claim.value,
            )
            self.state.suspects[place].at = claim.line

    def _true(self, key: str) -> float:
        row = self.known.truth.get(key)
        return 0.0 if row is None else float(row[0])

    def _wrong_signs(self, first: int) -> Iterator[tuple[Claim, list[str]]]:
        """Components in unit vectors, where the other components agree with up and right."""
        good, bad = 0, []
        for claim in self.state.claims:
            axis = re.search(r"\b([ij])vec\b", f"{claim.words} {claim.text}")
            if not axis or claim.value.free or self._body(self.state.raw_of(claim.line), "") < 0:
                continue
            head, part = ("reaction.right", "*level ") if axis[1] == "i" else ("reaction.up", "*upright ")
            keys = [
                key for key in self.known.truth if key == head or claim.meaning.role != "joint" and key.startswith(part)
            ]
            signs = {np.sign(self._true(key)) for key in self.answers.fits(claim, keys, CLOSE)}
            good += np.sign(claim.value.number) in signs
            if (
                signs
                and np.sign(claim.value.number) not in signs
                and len(signs) == 1
                and (claim.meaning.role == "joint" or self.answers.fits(claim, [head], CLOSE))
            ):
                bad.append(claim)
        if good >= 1 and good >= len(bad):
            yield from ((claim, SLIPS) for claim in bad if claim.line <= first)

    def _wrong_words(self, first: int) -> Iterator[tuple[Claim, list[str]]]:
        for claim in self.state.claims:
            if (
                claim.line >= first
                or claim.value.free
                or claim.solved
                and not claim.shown
                or _NEITHER.search(self.state.raw_of(claim.line))
            ):
                continue
            if self._pull_wrong_way(claim):
                yield claim, ["sign-of-a-term", "scale-force-direction", "wrong-quadrant"]
            if self._complement(claim):
                yield claim, ["arctan-upside-down", "wrong-quadrant", "angle-wrong-reference"]
            if self._wrong_way(claim) or self._wrong_slope(claim):
                yield claim, SLIPS if claim.unit != "deg" else ["wrong-quadrant", *SLIPS[:2], SLIPS[3]]

    def _said(self, claim: Claim) -> str:
        """The words beside a claim: of its clause, or of the whole line where it is the only claim."""
        others = {each.text for each in self.state.on(claim.line) if each.meaning.role or each.meaning.items}
        text = f"{claim.text} {claim.words}".lower()
        return text if len(others) > 1 or _WAYS.search(text) else self.state.raw_of(claim.line)

    def _wrong_way(self, claim: Claim) -> bool:
        raw, text = self.state.raw_of(claim.line), _NO_DIRECTION.sub(" ", self._said(claim))
        ways = (
            set(_WAYS.findall(text)) | {"up" for _ in re.findall("↑", text)} | {"down" for _ in re.findall("↓", text)}
        )
        if not ways or any(each <= ways for each in _OPPOSITE):
            return False
        keys = {each.key for each in self.known.true_of(claim.value.f, claim.unit)} | set(
            self.answers.fits(claim, ["reaction", "reaction.up", "reaction.right"], 0.004)
        )
        if not self._of_the_joint(claim, raw, text, keys):
            return False
        right, up = self._true("reaction.right"), self._true("reaction.up")
        upward = up if keys & {"reaction.up", "reaction"} else 0.0
        sideways = right if "reaction.right" in keys or "reaction" in keys and abs(right) > 1e-6 else 0.0
        turned = self._body(raw, text)
        return bool(turned) and any(
            way in ("up", "down")
            and abs(upward) > 1e-6
            and (way == "up") != (upward * turned > 0)
            or way in ("left", "right")
            and abs(sideways) > 1e-6
            and (way == "right") != (sideways * turned > 0)
            for way in ways
        )

    def _pull_wrong_way(self, claim: Claim) -> bool:
        """A muscle that pulls straight up or down, and is said to pull the other way."""
        if (
            claim.meaning.role != "pull"
            or claim.meaning.axis
            or len(self.hints.muscles) != 1
            or self.hints.muscles != self.hints.unknown_items
        ):
            return False
        name = next(iter(self.hints.muscles))
        up, level = self._true(f"*upright {name}"), self._true(f"*level {name}")
        text = _NO_DIRECTION.sub(" ", f"{claim.text} {claim.words}".lower())
        ways = set(_WAYS.findall(text)) & {"up", "down"}
        said = set(re.findall(r"[a-z]{3,}", text))
        if (
            len(ways) != 1
            or abs(level) > 1e-6
            or not up
            or said & (JOINT | self.hints.bone)
            or re.search(r"\bon\b|\bby\b|\bfrom\b|\bagainst\b", text)
        ):
            return False
        keys = {each.key for each in self.known.true_of(claim.value.f, claim.unit)}
        return bool(keys & {*self.known.unknowns}) and (ways == {"up"}) != (up > 0)

    def _of_the_joint(self, claim: Claim, raw: str, text: str, keys: set[str]) -> bool:
        if claim.meaning.role == "joint":
            return True
        alone = len(self.state.on(claim.line)) == 1
        said = set(re.findall(r"[a-z]{3,}", raw if alone else text))
        joint = said & (JOINT | self.hints.bone - self.segments)
        return (
            not claim.meaning.role
            and claim.unit in ("N", "lb")
            and not claim.meaning.items & self.hints.pulls
            and bool(joint)
            and any(key.startswith("reaction") for key in keys)
        )

    def _wrong_slope(self, claim: Claim) -> bool:
        """So many degrees above or below the level."""
        raw, text = self.state.raw_of(claim.line), self._said(claim)
        found = _SLOPE.search(text) or (_SLOPE.search(raw) if len(self.state.on(claim.line)) == 1 else None)
        direction = self.known.truth.get("*direction reaction")
        if not found or claim.unit != "deg" and claim.unit or direction is None or _NOT_JOINT.search(raw):
            return False
        up = np.sin(np.radians(float(direction[0])))
        slope = abs(np.degrees(np.arcsin(up)))
        if abs(abs(claim.value.number) - slope) >= 0.7 or any(
            abs(self._slope(item) - slope) < 0.5 for item in self.hints.unknown_items
        ):
            return False
        turned = self._body(raw, text)
        return bool(turned) and (found[1] == "above") != (up * turned > 0)

    def _complement(self, claim: Claim) -> bool:
        """The joint force's angle to the upright, said to be above or below the level."""
        raw, direction = self.state.raw_of(claim.line), self.known.truth.get("*direction reaction")
        if claim.unit != "deg" or direction is None or not _SLOPE.search(raw) or len(_SLOPE.findall(raw)) > 1:
            return False
        slope = abs(float(np.degrees(np.arcsin(np.sin(np.radians(float(direction[0])))))))
        joint = any(each.meaning.role == "joint" for each in self.state.on(claim.line)) or any(
            each.key.endswith("reaction") for each in claim.keys
        )
        return joint and abs(90 - 2 * slope) > 3 and abs(abs(claim.value.number) - (90 - slope)) < 0.6

    def _slope(self, item: str) -> float:
        return abs(
            float(np.degrees(np.arctan2(abs(self._true(f"*upright {item}")), abs(self._true(f"*level {item}")))))
        )

    def _body(self, raw: str, text: str) -> int:
        """1: the force on the body cut free; -1: on the bone; 0: the words leave it open."""
        label = _ONE_ON_OTHER.search(raw)
        if label and label[1] in self.segments - self.hints.bone:
            return -1
        said = _RESTS.sub(" ", raw)
        said = text if _ON.search(text) or _ACTS.search(text) else said
        receivers = [word for found in _ON.findall(said) + _PUSHED.findall(said) for word in [found]]
        takers = _TAKES.findall(said)
        for word in (*takers, *reversed(receivers)):
            if word in self.bone or word == "bone" and word in takers:
                return -1
            if word in self.segments:
                return 1
        actor = _ACTS.search(said)
        if actor and actor[1] in self.hints.pivot and not self.hints.muscles:
            return 0
        own = self.segments - self.hints.bone
        if (
            actor
            and actor[1] in own
            or own
            and re.search(rf"\b(?:by|from) the (?:{'|'.join(map(re.escape, sorted(own)))})\b", said)
        ):
            return -1
        return 0 if [word for word in (*receivers, *takers) if word not in _OPEN] or self._on_bone_so_far() else 1

    def _on_bone_so_far(self) -> bool:
        """Whether the working says that its letters are for the push on the bone."""
        if self._on_bone is None:
            said = [each.text.lower() for each in self.state.lines if _FOR_A_FORCE.search(each.text.lower())]
            self._on_bone = any(word in self.bone for each in said for word in _ON.findall(each))
        return self._on_bone
