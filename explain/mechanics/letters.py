"""Which letter stands for what in one problem: short subscripts from the names, no letter used twice."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ..equation import key as keys
from ..problem.course import Course
from ..equation.terms import Letter
from ..errors import Fault


SPARE = "lbcuvwn"  # for a letter that a class has taken for something else


def _candidates(name: str) -> Iterator[str]:
    words = re.findall(r"[^\W_]+", name) or ["X"]
    content = [word for word in words if word.lower() not in ("and", "of", "the", "on", "in", "at", "a", "an")] or words
    yield content[0][0].upper()
    if len(content) > 1:
        yield "".join(word[0].upper() for word in content)
    first = content[0][:1].upper() + content[0][1:].lower()
    for length in range(2, len(first) + 1):
        yield first[:length]
    for number in range(1, 1000):
        yield f"{first[:1]}{number}"


def subscripts(names: Sequence[str]) -> dict[str, str]:
    """A short subscript for each name: its initial where no other name begins so, else initials, else more of the
    word. A name of one letter keeps it.
    """
    initials = [next(_candidates(name)) for name in names]
    taken: set[str] = set()
    out: dict[str, str] = {}
    for name, initial in zip(names, initials, strict=True):
        options = _candidates(name)
        if initials.count(initial) > 1 and name.upper() != initial:
            next(options)
        out[name] = next(each for each in options if each not in taken)
        taken.add(out[name])
    return out


class Letters:
    """Hands out one letter for each key ("biceps.force"), the same whenever it is asked, and none twice."""

    def __init__(self, course: Course, names: Sequence[str], angles: Sequence[str], heavy: Sequence[str] = ()) -> None:
        self.course, self.angles, self.heavy = course, tuple(angles), frozenset(heavy)
        self.sub = subscripts(names)
        self.joint = course.symbols.get("reaction", "J" if course.force_letter != "J" else "R")
        self.known: dict[str, Letter] = {}
        self.used: dict[str, str] = {}

    def __call__(self, key: str) -> Letter:
        if key not in self.known:
            text = self._free(self._text(key), key)
            if self.used.setdefault(text, key) != key:
                raise Fault(
                    key="course.symbols",
                    found=f"{text} for {self.used[text]!r} and for {key!r}",
                    expected="a letter of its own for each quantity",
                    example='symbols = { biceps = "F_B" }',
                )
            self.known[key] = Letter(key, text)
        return self.known[key]

    def _free(self, text: str, key: str) -> str:
        """The letter, or where a class uses it for something else, such as s for distances, another one with the
        same subscript.
        """
        base, _, subscript = text.partition("_")
        if not subscript or text in self.course.symbols.values() or self.used.get(text, key) == key:
            return text
        return next((free for other in SPARE if (free := f"{other}_{subscript}") not in self.used), text)

    def _text(self, key: str) -> str:
        fixed = {
            "g": "g",
            "*person.mass": "m_body",
            "*person.weight": "W_body",
            keys.JOINT_ANGLE: "beta",
            keys.FRICTION: "mu",
            "reaction": self.joint,
            "reaction.right": f"{self.joint}_x",
            "reaction.up": f"{self.joint}_y",
            "reaction.along": f"{self.joint}_along",
            "reaction.across": f"{self.joint}_across",
            "total": f"Σ{self.course.letter}",
            "level": f"Σ{self.course.force_letter}_x",
            "upright": f"Σ{self.course.force_letter}_y",
            "along": f"Σ{self.course.force_letter}_along",
            "across": f"Σ{self.course.force_letter}_across",
            keys.JOINT_MOMENT: f"{self.course.letter}_joint",
        }
        if key in fixed:
            return fixed[key]
        name, what, about = keys.of(key).owner, keys.of(key).what, keys.of(key).about
        if what in ("force", "weight", "moment") and name in self.course.symbols:
            return self.course.symbols[name]
        d = self.course.distance_letter
        forms = {
            "*angle": "theta_%s" if len(self.angles) > 1 else "theta",
            "*arm": f"{d}_%s⊥",
            "*fold": "alpha_%s",
            "*inclination": "gamma_%s",
            "*moment": f"{self.course.letter}_%s",
            "*turning": f"{'W' if name in self.heavy else self.course.force_letter}_%s⊥",
            "force": f"{self.course.force_letter}_%s",
            "limit": f"{self.course.force_letter}_%s,max",
            "weight": "W_%s",
            "mass": "m_%s",
            "hung": "m_%s",
            "at": f"{d}_%s",
            "from": "a_%s",
            "to": "b_%s",
            "per_length": "w_%s",
            "com": f"{d}_%s",
            "length": "L_%s",
            "moment_arm": f"{d}_%s⊥",
            "x": "x_%s",
            "y": "y_%s",
            "across": "Δx_%s",
            "rise": "Δy_%s",
            "line": "s_%s",
            "moment": f"{self.course.letter}_%s",
            "area": "A_%s",
            "stress": "sigma_%s",
            "share": "p_%s",
            "mass%": "p_%s",
            "weight%": "p_%s",
            "com%": "q_%s",
            "at%": "q_%s",
            "force%": "k_%s",
            "tx": "x_%s′",
            "ty": "y_%s′",
        }
        whose = ",".join(self.sub[each] for each in (name, about) if each)
        return forms[what] % whose if "%" in forms[what] else forms[what]
