"""Problems at the edge of what a file may state: folded bones, forces through the pivot, parts that vanish, loads
that cancel, tiny and huge values.
"""

from __future__ import annotations

from random import Random
from typing import Any

Table = dict[str, Any]
BONES = ("upper arm", "forearm", "hand")
LENGTHS = (
    "12 cm",
    "12 cm",
    "24 cm",
    "0.12 m",
    "6 in",
    "12 in",
    "1 ft",
    "120 mm",
    "0.01 mm",
    "4000 m",
    "10.39230485 cm",
)
WAYS = (
    "right",
    "left",
    "up",
    "down",
    "30 deg above right",
    "30 deg below left",
    "60 deg above right",
    "60 deg below left",
    "45 deg above left",
    "45 deg below right",
    "90 deg above right",
    "90 deg below left",
    "0 deg above right",
    "89.999999 deg above right",
    "17.3 deg left of up",
    "17.3 deg right of down",
)
OWN_WAYS = (
    *WAYS,
    "out",
    "back",
    "0 deg from out toward up",
    "90 deg from out toward up",
    "70 deg from back toward up",
    "30 deg from back toward down",
)
HEAVY = (
    {"mass": "2 kg"},
    {"mass": "2 kg"},
    {"weight": "20 N"},
    {"weight": "20 N"},
    {"mass": "2 %"},
    {"weight": "5 lb"},
    {"mass": "5 lb"},
    {"mass": "0.0001 g"},
    {"weight": "90000 kN"},
    {"weight": "3 %"},
)
SIZES = ("20 N", "20 N", "100 N", "5 lb", "0.000001 N", "80000 kN", "5 %", "19.62 N")
COURSE: dict[str, tuple[Any, ...]] = {
    "word": ("moment", "torque"),
    "letter": ("M", "tau", "T"),
    "positive": ("counter-clockwise", "clockwise", "up"),
    "g": ("9.81 m/s^2", "10 m/s^2", "32.2 ft/s^2"),
    "lengths": ("as given", "m", "cm", "in", "ft"),
    "forces": ("N", "lb"),
    "method": ("perpendicular distance", "turning component"),
    "order": ("multiply first", "divide first", "letters first"),
    "figures": (1, 2, 3, 4, 6),
    "working_figures": (6, 7, 8),
    "ties": ("up", "even"),
    "carry": ("unrounded", "as shown"),
    "force_letter": ("F", "P"),
    "distance_letter": ("d", "r"),
    "resultant": ("size and direction", "parts", ["size and direction", "parts"]),
    "reaction_on": ("the body cut free", "the other bone"),
    "detail": ("full", "brief"),
}


def degenerate(draw: Random) -> Table:
    """One problem. It may have no solution, or not be allowed at all."""
    bones = [_bone(draw, name) for name in BONES[: draw.choice((0, 1, 1, 2, 2, 2, 3))]]
    out: Table = {
        "title": "At the edge",
        "pivot": {"name": "elbow"},
        "person": {"mass": "70 kg"},
        "course": _course(draw),
        "segment": bones,
        "load": [_load(draw, name, bones) for name in ("jug", "basket")[: draw.choice((0, 1, 1, 2))]],
        "force": [
            _pull(draw, name, bones, draw.choice(SIZES)) for name in ("cord", "strap")[: draw.choice((0, 0, 1, 2))]
        ],
        "couple": [
            {
                "name": name,
                "moment": draw.choice(("1 N m", "1 N m", "2.4 N m", "0 N m", "12 lb ft", "0.00001 N m")),
                "turns": draw.choice(("counter-clockwise", "clockwise")),
            }
            for name in ("spring", "brake")[: draw.choice((0, 0, 1, 2))]
        ],
    }
    _mirror(draw, out)
    _seek(draw, out, bones)
    return out


def _course(draw: Random) -> Table:
    return {
        key: draw.choice(values)
        for key, values in COURSE.items()
        if draw.random() < (0.08 if key == "resultant" else 0.35)
    }


def _bone(draw: Random, name: str) -> Table:
    out: Table = {"name": name, "length": draw.choice(LENGTHS), "direction": draw.choice(WAYS)}
    if draw.random() < 0.4:
        out |= {**draw.choice(HEAVY), "com": draw.choice(("50 %", "100 %", "12 cm", "0 cm", "6 cm"))}
    return out


def _place(draw: Random, bones: list[Table]) -> Table:
    if not bones or draw.random() < 0.35:
        return {
            "point": [
                draw.choice(("0 cm", "2 cm", "-2 cm", "12 cm", "-12 cm", "6 in")),
                draw.choice(("0 cm", "2 cm", "-2 cm", "12 cm")),
            ]
        }
    return {
        "on": draw.choice(bones)["name"],
        "at": draw.choice(("0 cm", "12 cm", "12 cm", "0.12 m", "24 cm", "50 %", "100 %", "6 in", "-12 cm", "5 cm")),
    }


def _load(draw: Random, name: str, bones: list[Table]) -> Table:
    return {"name": name, **draw.choice(HEAVY), **_place(draw, bones)}


def _pull(draw: Random, name: str, bones: list[Table], force: str) -> Table:
    out: Table = {"name": name, "force": force, **_place(draw, bones)}
    kind = draw.random()
    if kind < 0.2:
        out["toward"] = [
            draw.choice(("0 cm", "4 cm", "-2 cm", "24 cm")),
            draw.choice(("0 cm", "4 cm", "25 cm", "-2 cm")),
        ]
    elif kind < 0.3:
        out |= {
            "moment_arm": draw.choice(("3 cm", "0 cm", "2 in")),
            "turns": draw.choice(("counter-clockwise", "clockwise")),
        }
        if draw.random() < 0.7:
            out["direction"] = draw.choice(OWN_WAYS)
    else:
        out["direction"] = draw.choice(OWN_WAYS)
    if draw.random() < 0.2:
        out["count"] = draw.choice((2, 3))
    return out


def _mirror(draw: Random, out: Table) -> None:
    """Give a force or a couple its equal and opposite."""
    if out["force"] and draw.random() < 0.3:
        first = out["force"][0]
        opposite = {"right": "left", "left": "right", "up": "down", "down": "up", "out": "back", "back": "out"}.get(
            first.get("direction", "")
        )
        if opposite:
            out["force"] = [first, {**first, "name": "strap", "direction": opposite}]
    if len(out["couple"]) == 2 and draw.random() < 0.5:
        out["couple"][1]["moment"] = out["couple"][0]["moment"]


def _seek(draw: Random, out: Table, bones: list[Table]) -> None:
    kind = draw.choice(
        (
            "force",
            "force",
            "force",
            "share",
            "mass",
            "weight",
            "at",
            "moment",
            "moment arm",
            "pull angle",
            "bone angle",
            "two",
            "only",
        )
    )
    pull = _pull(draw, "biceps", bones, "?" if kind in ("force", "share", "two") else draw.choice(SIZES))
    out["muscle"], sought = [pull], "biceps"
    if kind == "share":
        out["muscle"].append(
            _pull(draw, "brachialis", bones, draw.choice(("0.70 * biceps", "1 * biceps", "0 * biceps")))
        )
    elif kind in ("mass", "weight", "at") and out["load"]:
        load = out["load"][0]
        if kind == "at":
            load.pop("point", None)
            load |= {"at": "?"} | ({"on": bones[-1]["name"]} if bones else {})
        else:
            load.pop("mass", None), load.pop("weight", None)
            load[kind] = "?"
        sought = f"jug.{kind}"
    elif kind == "moment" and out["couple"]:
        out["couple"][0]["moment"], sought = "?", "spring"
    elif kind == "moment arm":
        pull.pop("toward", None)
        pull |= {
            "moment_arm": "?",
            "turns": draw.choice(("counter-clockwise", "clockwise")),
            "direction": pull.get("direction", "up"),
        }
        sought = "biceps.moment_arm"
    elif kind == "pull angle":
        for key in ("toward", "moment_arm", "turns"):
            pull.pop(key, None)
        pull["direction"], sought = (
            draw.choice(("? above right", "? left of up", "? from out toward up", "? from back toward up")),
            "biceps.direction",
        )
    elif kind == "bone angle" and bones:
        bones[-1]["direction"], sought = (
            draw.choice(("? above right", "? right of down", "? below left")),
            f"{bones[-1]['name']}.direction",
        )
    elif kind == "two":
        out["pivot"]["reaction"] = False
        out["muscle"].append(_pull(draw, "triceps", bones, "?"))
    elif kind == "only":
        out["balanced"] = False
        out["ask"] = ["total.moment", "biceps.moment"]
        return
    reaction = draw.choice(
        (["reaction"], ["reaction.right", "reaction.up"], ["reaction", "reaction.along", "reaction.across"], [])
    )
    if len(reaction) == 3:
        if bones:
            out["course"]["axes"] = f"along and across the {draw.choice(bones)['name']}"
        else:
            reaction = ["reaction"]
    out["ask"] = [sought, *reaction] if out["pivot"].get("reaction", True) else [sought, "triceps"]
