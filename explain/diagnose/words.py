"""What students may call the quantities of a problem: every key with its spellings, and what a label in words may mean. Knows no line."""
from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from ..account import Account, Item
from ..letters import Letters
from ..reading import Vocabulary, vocabulary_of
from ..reading.vocabulary import fold
from ..reading.words import LEADS, SMALL

_MOMENTS = ("M", "T", "tau", "Γ", "moment", "torque", "τ")
_JOINT = ("R", "J", "N", "JRF", "F_J", "F_R", "F_joint", "F_j", "R_J", "J_R", "N_J", "H_J", "reaction", "joint force", "joint reaction", "reaction force",
          "joint reaction force", "bone on bone force", "contact force")
_LEVEL, _UPRIGHT = ("x", "h", "H", "horizontal", "right"), ("y", "v", "V", "vertical", "up")
_SPOKEN = frozenset(each for each in SMALL | LEADS | frozenset(["am", "be", "do", "go", "he", "hi", "if", "me", "my", "no", "us", "we"]) if len(each) > 1)   # no letters
_STARTS = frozenset(["We", "He", "It", "If", "In", "Is", "My", "No", "Of", "On", "Or", "To", "Up", "Us", "At", "As", "An", "Be", "By", "Do", "So", "Go"])
_SMALL = ("and", "of", "the", "on", "in", "at", "a", "an")
_FREE = ("muscle", "m", "M", "mus")


def spellings(account: Account, letters: Letters, pivot: str, bone: str) -> dict[str, tuple[str, ...]]:
    """By key, every spelling of a quantity of this problem."""
    out: dict[str, list[str]] = {}
    for key, letter in letters.known.items():
        out.setdefault(key, []).append(letter.text)
    muscles = [each for each in account.items if each.kind == "muscle"]
    heavy = [each for each in account.items if each.kind in ("weight", "load")]
    forces = [each for each in account.items if each.kind == "force"]
    for item in account.items:
        subs = _subscripts(item, letters, muscles, heavy, forces)
        for key, spelled in _item(item, subs, muscles, heavy, forces):
            out.setdefault(key, []).extend(spelled)
    _joint(out, pivot, bone, account)
    out.setdefault("total", []).extend(("M", "T", "tau", "M_net", "T_net", "M_load", "T_load", "moment", "torque", "M_total", "T_total", "tau_net", "tau_total",
                                        "M_tot", "T_tot", "total moment", "total torque", "load moment", "load torque"))
    out.setdefault("g", []).append("g")
    for key in account.unknowns:
        if key.startswith("*angle "):
            out.setdefault(key, []).extend(("theta", "alpha", "phi", "beta", "angle", "a", "x"))
    for key in account.unknowns:
        out.setdefault(key, []).append("x")
    out["*weights"] = ["W", "W_total", "W_tot", "W_t", "total weight", "weight", "weights"]
    worked = account.values()
    return {key: tuple(each for each in dict.fromkeys(spelled) if each and not _is_word(fold(each))) for key, spelled in out.items() if key in worked}


def _is_word(letter: str) -> bool:
    """Whether a letter would be taken for a small word where it stands in a line: "so", "The", "We"; Me and Te begin no line."""
    return letter.casefold() in _SPOKEN and not (len(letter) == 2 and letter[:1].isupper() and letter not in _STARTS)


def _subscripts(item: Item, letters: Letters, muscles: Sequence[Item], heavy: Sequence[Item], forces: Sequence[Item]) -> tuple[str, ...]:
    words = [each for each in re.findall(r"[^\W_]+", item.name) if each.casefold() not in _SMALL] or [item.name]
    sub, first, last = letters.sub[item.name], words[0], words[-1]
    out = [sub, sub.lower(), first, first[:2], first[:3], last, first[0], first[0].upper(), "".join(word[0] for word in words), "".join(words), last[:3], first[:4]]
    if item.kind == "muscle" and len(muscles) == 1:
        out += _FREE
    if item.kind == "load" and sum(each.kind == "load" for each in heavy) == 1:
        out += ["L", "load", "l", "w", "W", "o", "obj"]
    if item.kind == "weight" and sum(each.kind == "weight" for each in heavy) == 1:
        out += ["s", "seg", "limb", "arm" if "arm" in item.name else "leg" if item.name in ("shank", "thigh", "leg") else "segment"]
    out += [str(number) for number in range(1, len(muscles) + len(heavy) + len(forces) + 1)]
    return tuple(dict.fromkeys(out))


def _item(item: Item, subs: Sequence[str], muscles: Sequence[Item], heavy: Sequence[Item], forces: Sequence[Item]) -> list[tuple[str, list[str]]]:
    name = item.name
    out: list[tuple[str, list[str]]] = []
    if item.kind == "couple":
        return [(item.key, [f"{each}_{sub}" for each in ("M", "T", "C", "tau") for sub in subs] + ["C", name])]
    weights = item.kind in ("weight", "load")
    size = [f"{head}_{sub}" for head in (("W", "F", "Fg", "w", "G", "F_g", "P", "wt") if weights else ("F", "T", "f", "P", "R", "N")) for sub in subs]
    size += [name, f"pull of {name}", f"pull of the {name}", f"{name} pull", f"force of {name}", f"{name} force", f"weight of {name}", f"{name} weight", f"weight of the {name}"] + [sub for sub in subs if len(sub) > 1]
    size += [subs[0]] if len(subs[0]) == 1 and subs[0].isupper() else []
    if item.kind == "muscle" and len(muscles) == 1:
        size += ["F", "Fm", "F_muscle", "muscle force", "B", "P", "T", "Q", "muscle", "tension", "f"]
    if weights and len(heavy) == 1:
        size += ["W", "w", "Fg", "weight", "load", "L", "F_g", "P", "G"]
    elif item.kind == "load" and sum(each.kind == "load" for each in heavy) == 1:
        size += ["W", "L", "load", "P"]
    if item.kind == "force" and len(forces) == 1:
        size += ["P", "T", "N", "F"]
    out.append((item.key, size))
    if item.mass:
        out.append((item.mass, [f"m_{sub}" for sub in subs] + ["m"] + [f"mass of {name}", f"{name} mass", f"mass of the {name}"]))
    distances = [f"{head}_{sub}" for head in ("d", "r", "l", "x", "s", "a", "D", "L", "R", "b") for sub in subs]
    places = [leg.key for leg in item.legs[-1:]] + ([item.arm] if item.arm and not item.arm.startswith("*") else [])
    for key in places:
        out.append((key, [*distances, "d", "x", "r", "l", "s", "L", "distance"]))
    arm = [*distances, *(f"{head}_{sub}" for head in ("MA", "ma", "arm", "lever") for sub in subs), "d", "r", "l", "x", "h", "b",
           f"arm of {name}", f"{name} arm", f"lever arm of {name}", f"moment arm of {name}", f"distance of {name}", f"level distance of {name}", f"perpendicular distance of {name}"]
    out.append((f"*arm {name}", arm))
    out.append((f"*moment {name}", [f"{head}_{sub}" for head in ("M", "T", "tau", "mom", "torque") for sub in subs]
                + [name] + [f"{word} of {name}" for word in ("moment", "torque")] + [f"{name} {word}" for word in ("moment", "torque")]))
    return [*out, *_parts(item, subs, len(muscles) == 1)]


def _parts(item: Item, subs: Sequence[str], only: bool) -> list[tuple[str, list[str]]]:
    out = []
    for side, ends in (("*level", _LEVEL), ("*upright", _UPRIGHT)):
        spelled = [form.format(sub, end) for form in ("F_{}{}", "F_{},{}", "{}_{}") for sub in subs for end in ends[:3]
                   if form[0] == "F" or len(sub) > 1 or sub.isupper()]
        if item.kind == "muscle" and only:
            spelled += [f"x_{end}" for end in ends[:1]] + [f"F_{end}" for end in ends] + [f"B_{end}" for end in ends[:2]] + [f"T_{end}" for end in ends[:2]] + [ends[2]]
        out.append((f"{side} {item.name}", spelled))
    turning = [f"F_{sub}{end}" for sub in subs for end in ("t", "⊥", "perp")] + [f"{head}_{sub}⊥" for head in ("F", "W") for sub in subs]
    if item.kind == "muscle" and only:
        turning += ["F_t", "F_perp", "F_⊥", "F_n", "F_rot", "F_y"]
    return [*out, (f"*turning {item.name}", turning)]


def _joint(out: dict[str, list[str]], pivot: str, bone: str, account: Account) -> None:
    subs = [pivot, pivot[:1], pivot[:1].upper(), *([bone, bone[:1].upper()] if bone else []), "j", "J", "joint", "R", "r"]
    whole = [*_JOINT, *(f"{head}_{sub}" for head in ("F", "R", "J") for sub in subs)]
    out.setdefault("reaction", []).extend(whole)
    sides: dict[str, tuple[str, ...]] = {"reaction.right": _LEVEL, "reaction.up": _UPRIGHT}
    if account.bone is not None:
        sides |= {"reaction.along": ("along", "a", "n", "ax", "axial", "x"), "reaction.across": ("across", "t", "c", "sh", "shear", "y")}
    for key, ends in sides.items():
        heads = ("R", "J", "N", "H", "F_J", "F_R", "F_j", "JRF", "F_joint", *(f"{head}_{sub}" for head in ("F", "R", "J") for sub in subs))
        spelled = [f"{head}{end}" if "_" in head else f"{head}_{end}" for head in heads for end in ends[:4]]
        out.setdefault(key, []).extend([*spelled, *(f"F_{end}" for end in ends[:2]), ends[2]])
    out.setdefault("*angle reaction", []).extend(("theta", "alpha", "phi", "beta", "angle", "theta_R", "theta_J", "direction", "angle of R"))


def vocabulary(account: Account, letters: Letters, pivot: str, bone: str) -> Vocabulary:
    """The vocabulary of a problem for the reader."""
    return vocabulary_of(spellings(account, letters, pivot, bone))


_KINDS: Mapping[str, tuple[str, ...]] = {
    "distance": ("*arm ", ".at", ".com", ".moment_arm", ".length"), "arm": ("*arm ", ".at", ".com", ".moment_arm"), "lever": ("*arm ",),
    "length": (".length", ".at", ".com"), "moment": ("*moment ",), "torque": ("*moment ",), "weight": (".weight",), "force": (".force", ".weight"),
    "pull": (".force",), "mass": (".mass",),
    "component": ("*turning ", "*level ", "*upright "), "part": ("*turning ", "*level ", "*upright ")}


def label_keys(label: str, account: Account, values: Mapping[str, float]) -> tuple[str, ...]:
    """What a label may speak of: the quantities of the item it names, of the kinds it names."""
    words = set(re.findall(r"[^\W_]+", label.casefold()))
    if words & {"angle", "direction"} and not words & {"arm", "force", "weight"}:
        return tuple(key for key in values if key.startswith("*angle "))
    named = [each.name for each in account.items if words & {w for w in re.findall(r"[^\W_]+", each.name.casefold()) if w not in ("and", "of", "the")}]
    kinds = [ends for word, ends in _KINDS.items() if word in words or f"{word}s" in words]
    if len(named) != 1:
        return ()
    item = account.item(named[0])
    own = [item.key, item.mass, f"*arm {item.name}", f"*moment {item.name}", f"*turning {item.name}", f"*level {item.name}", f"*upright {item.name}",
           *(leg.key for leg in item.legs), item.arm]
    keys = [key for key in dict.fromkeys(own) if key in values]
    if not kinds:
        return tuple(keys)
    return tuple(key for key in keys if any(key.startswith(end) if end.startswith("*") else key.endswith(end) for ends in kinds for end in ends))


_HEADS: Mapping[str, str] = {"f": "", "w": "", "fg": "", "f_g": "", "p": "", "m": "*moment ", "t": "*moment ", "tau": "*moment ", "τ": "*moment ",
                             "d": "*arm ", "r": "*arm ", "x": "*arm ", "l": "*arm "}


def key_of(text: str, account: Account) -> str:
    """What a letter stands for whose subscript is a part of just one item's name: Fg(bag) for the sandbag; "" where it is not."""
    found = re.fullmatch(r"(Fg|F_g|tau|τ|[A-Za-z])[_({]+([A-Za-z]{3,})[)}]*", text)
    if found is None or found[1].casefold() not in _HEADS:
        return ""
    items = [each for each in account.items if found[2].casefold() in each.name.casefold()]
    if len(items) != 1:
        return ""
    head = _HEADS[found[1].casefold()]
    if found[1] == "m" and items[0].mass:
        return items[0].mass
    return f"{head}{items[0].name}" if head else items[0].key


def without(known: Vocabulary, texts: frozenset[str]) -> Vocabulary:
    """A vocabulary that does not know some letters."""
    folded = {fold(each) for each in texts}
    return vocabulary_of({key: tuple(each for each in spelled if fold(each) not in folded) for key, spelled in known.given.items()})
