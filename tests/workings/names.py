"""The letters that a student takes for the quantities of one problem, each once. Knows no mechanics."""

from __future__ import annotations

from collections.abc import Sequence

from explain.marking.slips.account import Account, Item

from .style import Style

_LATEX = {"tau": "\\tau", "τ": "\\tau", "theta": "\\theta", "θ": "\\theta"}


class Names:
    """Letters by kind and item; no letter stands for two things."""

    def __init__(self, account: Account, style: Style) -> None:
        self.style = style
        self.used: dict[str, str] = {}
        self.items = [each.name for each in account.items]
        self.pulls = [each.name for each in account.items if each.kind in ("muscle", "force")]
        self.heavy = [each.name for each in account.items if each.kind in ("weight", "load")]
        self.subs = _subs(self.items)
        self.words = {name: _word(name, self.items) for name in self.items}

    def force(self, item: Item) -> str:
        """The letter of a pull or a weight."""
        if item.kind in ("weight", "load"):
            return self._take(
                self._formed(self.style.weight, item.name, self.heavy),
                f"size {item.name}",
                f"W_{self.words[item.name]}",
            )
        form = self.style.force
        if len(self.pulls) > 1 and form in ("F", "Fm", "F_m", "F_M", "F_{m}", "T", "P", "B", "f", "FM", "Fmuscle", "x"):
            form = "F_sub"
        return self._take(self._formed(form, item.name, self.pulls), f"size {item.name}", f"F_{self.words[item.name]}")

    def moment(self, item: Item) -> str:
        return self._take(
            self._formed(self.style.moment or "M_sub", item.name, self.items),
            f"moment {item.name}",
            f"M_{self.words[item.name]}",
        )

    def arm(self, item: Item) -> str:
        return self._take(
            self._formed(self.style.distance, item.name, self.items), f"arm {item.name}", f"d_{self.words[item.name]}"
        )

    def along(self, item: Item) -> str:
        """A distance along the item's own segment, which is its arm only where the arm is one distance."""
        if len(item.legs) < 2:
            return self.arm(item)
        return self._tex(
            f"{'x' if self.style.force != 'x' else 'c'}_{self.words[item.name]}"
            if not self.style.distance.startswith("x")
            else f"c_{self.words[item.name]}"
        )

    def mass(self, item: Item) -> str:
        return self._take(f"m_{self.subs[item.name]}", f"mass {item.name}", f"m_{self.words[item.name]}")

    def joint(self, part: str = "") -> str:
        """The joint force, or its part: x, y."""
        base = self.style.reaction.replace("_sub", "_j").replace("joint", "joint")
        if part and "_" in base:
            return self._tex(f"{base.split('_')[0]}_{'j' if 'j' in base else 'R'}{part}" if "{" not in base else base)
        if part:
            base = {"Fr": "R", "F_R": "R"}.get(base, base)
            return self._tex(f"{base}_{part}" if self.style.distance != "dsub" else f"{base}{part}")
        return self._tex(base)

    def _formed(self, form: str, name: str, among: Sequence[str]) -> str:
        if form.endswith("1") and len(form) == 2:
            return f"{form[0]}{among.index(name) + 1 if name in among else 1}"
        if "word" in form:
            return form.replace("word", self.words[name])
        if form == "sub":
            return self.subs[name].upper()
        if form == "B":
            return self.subs[name].upper()
        if "sub" in form:
            return form.replace("sub", self.subs[name])
        return form

    def _take(self, text: str, owner: str, fallback: str) -> str:
        text = self._tex(text)
        if (
            self.used.setdefault(text.casefold(), owner) == owner
            and text not in ("M", "m", "g", "x", "R", "W", "N")
            or text == "x" == self.style.force
        ):
            return text
        fallback = self._tex(fallback)
        self.used.setdefault(fallback.casefold(), owner)
        return fallback

    def _tex(self, text: str) -> str:
        if self.style.layout not in ("latex", "dollars") or "\\" in text:
            return text
        head, _, sub = text.partition("_")
        head = _LATEX.get(head, head)
        if " " in text or len(head.lstrip("\\")) > 2 and not head.startswith("\\"):
            return f"\\text{{{text}}}"
        sub = sub.strip("{}")
        return head + (f"_{{{sub}}}" if len(sub) == 1 else f"_{{\\text{{{sub}}}}}" if sub else "")


def _word(name: str, among: Sequence[str]) -> str:
    """The word of a name that nothing else has, as people shorten it."""
    for word in (*reversed(name.split()), name.replace(" ", "")):
        if len(word) > 2 and sum(word in each.split() for each in among) < 2:
            return word
    return name.replace(" ", "")


def _subs(names: Sequence[str]) -> dict[str, str]:
    out: dict[str, str] = {}
    for name in names:
        words = [each for each in name.split() if each not in ("and", "of", "the", "weight")]
        for sub in (
            words[0][0],
            words[-1][0],
            "".join(each[0] for each in words),
            words[0][:2],
            words[0][:3],
            words[0],
        ):
            if sub not in out.values():
                out[name] = sub
                break
    return out
