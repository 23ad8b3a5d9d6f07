"""Random problems of every kind, as a file would state them: a strategy that knows the file format and no mechanics."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from hypothesis import strategies as st

Draw = Callable[[st.SearchStrategy[Any]], Any]
Table = dict[str, Any]
SEGMENTS, LOADS, PULLS = ("upper arm", "forearm", "hand"), ("jug", "basket"), ("biceps", "brachialis", "cord")
KINDS = (
    "force",
    "share",
    "mass",
    "weight",
    "at",
    "pull at",
    "moment arm",
    "moment",
    "segment angle",
    "pull angle",
    "two supports",
    "two ropes",
    "moments only",
    "spread",
    "hung",
    "area",
    "rough",
    "about to slip",
)
SLANTED = (
    "{} deg above right",
    "{} deg below right",
    "{} deg above left",
    "{} deg below left",
    "{} deg left of up",
    "{} deg right of up",
    "{} deg left of down",
    "{} deg right of down",
    "{} deg from back toward up",
    "{} deg from out toward up",
    "{} deg from back toward down",
)
FREE = ("? above right", "? below right", "? above left", "? right of down", "? left of up")
COURSE: dict[str, tuple[Any, ...]] = {
    "word": ("moment", "torque"),
    "letter": ("M", "tau", "T"),
    "positive": ("counter-clockwise", "clockwise"),
    "g": ("9.81 m/s^2", "9.8 m/s^2", "10 m/s^2", "32.2 ft/s^2"),
    "lengths": ("as given", "metres", "cm", "in", "ft"),
    "forces": ("N", "lb"),
    "method": ("perpendicular distance", "turning component"),
    "order": ("multiply first", "divide first", "letters first"),
    "figures": (2, 3, 4),
    "working_figures": (4, 5, 7),
    "ties": ("up", "even"),
    "carry": ("unrounded", "as shown"),
    "force_letter": ("F", "P"),
    "distance_letter": ("d", "r"),
    "balance": ("sum is zero", "sum is zero", "two sides"),
    "first": ("products", "products", "moments"),
    "signs": ("in the equation", "in the equation", "with the numbers"),
}


def number(least: int, most: int, places: int = 1) -> st.SearchStrategy[str]:
    """A number as people write one, with up to so many places."""
    return st.integers(0, places).flatmap(
        lambda k: st.integers(least * 10**k, most * 10**k).map(
            lambda n: f"{n // 10**k}.{n % 10**k:0{k}d}" if k else str(n)
        )
    )


def lengths(least: int = 2, most: int = 45) -> st.SearchStrategy[str]:
    return st.one_of(
        number(least, most).map("{} cm".format),
        number(least, most, 0).map(lambda n: f"{int(n) / 100:g} m"),
        number(1, 1 + most // 3).map("{} in".format),
    )


def angles() -> st.SearchStrategy[str]:
    return st.one_of(
        st.integers(3, 87).map(str),
        st.integers(30, 870).map(lambda n: f"{n / 10:g}"),
        st.sampled_from(("30", "45", "60")),
    )


def forces() -> st.SearchStrategy[str]:
    return st.one_of(number(5, 400).map("{} N".format), number(3, 90).map("{} lb".format))


def courses() -> st.SearchStrategy[Table]:
    """A course: any of its keys, any value."""
    return st.fixed_dictionaries({}, optional={key: st.sampled_from(values) for key, values in COURSE.items()}).map(
        lambda course: {
            **course,
            "working_figures": max(course.get("working_figures", 5), course.get("figures", 3)),
            "signs": "in the equation"
            if course.get("balance") == "two sides"
            else course.get("signs", "in the equation"),
        }
    )


def _bone(draw: Draw, index: int) -> Table:
    direction = draw(
        st.one_of(
            st.sampled_from(("right", "left", "up", "down")),
            st.tuples(st.sampled_from(SLANTED[:8]), angles()).map(lambda both: both[0].format(both[1])),
        )
    )
    out: Table = {"name": SEGMENTS[index], "length": draw(lengths(12)), "direction": direction}
    if draw(st.booleans()):
        out["com"] = draw(st.one_of(lengths(), st.integers(35, 60).map("{} %".format)))
        out |= draw(
            st.one_of(
                number(1, 8).map(lambda n: {"mass": f"{n} kg"}),
                st.just({"mass": "2.7 %"}),
                forces().map(lambda f: {"weight": f}),
            )
        )
    return out


def _place(draw: Draw, bones: list[Table]) -> Table:
    if draw(st.integers(0, 3)) == 0:
        return {"point": [draw(lengths()), draw(st.one_of(lengths(), st.just("0 cm"), lengths().map("-{}".format)))]}
    on = draw(st.sampled_from(bones))["name"]
    return {"on": on, "at": draw(lengths())}


def _load(draw: Draw, name: str, bones: list[Table]) -> Table:
    heavy = draw(
        st.one_of(
            number(1, 12).map(lambda n: {"mass": f"{n} kg"}),
            st.just({"mass": "4.5 %"}),
            forces().map(lambda f: {"weight": f}),
        )
    )
    return {"name": name, **heavy, **_place(draw, bones)}


def _way(draw: Draw, place: Table) -> Table:
    """How a pull points: along the page, slanted, towards a point."""
    along = ("out", "back") if draw(st.integers(0, 5)) == 0 else ("up", "down", "left", "right")
    kinds = st.one_of(
        st.sampled_from(along),
        st.tuples(st.sampled_from(SLANTED[:8]), angles()).map(lambda both: both[0].format(both[1])),
        st.tuples(st.sampled_from(SLANTED[8:]), angles()).map(lambda both: both[0].format(both[1])),
    )
    if draw(st.integers(0, 4)) == 0:
        return {"toward": [draw(lengths()), draw(lengths(46, 90))]}
    return {"direction": draw(kinds)}


def _pull(draw: Draw, name: str, bones: list[Table], force: str) -> Table:
    place = _place(draw, bones)
    out: Table = {"name": name, "force": force, **place, **_way(draw, place)}
    if draw(st.integers(0, 4)) == 0:
        out |= {"moment_arm": draw(lengths(2, 9)), "turns": draw(st.sampled_from(("counter-clockwise", "clockwise")))}
        out.pop("toward", None)
        out.setdefault("direction", "up")
    if draw(st.integers(0, 5)) == 0:
        out["count"] = draw(st.integers(2, 3))
    return out


@st.composite
def problems(draw: Draw, kinds: tuple[str, ...] = KINDS) -> Table:
    """One problem. It may turn out to have no solution, or none worth asking for: that is for the second reading to
    say.
    """
    kind = draw(st.sampled_from(kinds))
    if kind in WHOLE:
        return WHOLE[kind](draw)
    bones = [_bone(draw, index) for index in range(draw(st.integers(1, 3)))]
    loads = [_load(draw, LOADS[index], bones) for index in range(draw(st.integers(1, 2)))]
    known = (
        [_pull(draw, "cord", bones, draw(st.one_of(forces(), st.just("12 %"))))] if draw(st.integers(0, 2)) == 0 else []
    )
    out: Table = {
        "title": f"A random problem: {kind}",
        "pivot": {"name": "elbow"},
        "person": {"mass": draw(number(48, 90)) + " kg"},
        "course": draw(courses()),
        "segment": bones,
        "load": loads,
        "force": known,
    }
    if draw(st.integers(0, 3)) == 0:
        out["couple"] = [
            {
                "name": "spring",
                "moment": draw(number(1, 20)) + " N m",
                "turns": draw(st.sampled_from(("counter-clockwise", "clockwise"))),
            }
        ]
    _seek(draw, kind, out)
    _ask(draw, kind, out)
    return out


def _seek(draw: Draw, kind: str, out: Table) -> None:
    """Put the "?" where this kind has it."""
    bones, force = out["segment"], "?" if kind in ("force", "share") else draw(forces())
    pull = _pull(draw, "biceps", bones, force)
    out["muscle"] = [pull]
    match kind:
        case "share":
            out["muscle"].append(_pull(draw, "brachialis", bones, "0.70 * biceps"))
        case "mass" | "weight":
            load = out["load"][0]
            load.pop("mass", None), load.pop("weight", None)
            load[kind] = "?"
        case "at" | "pull at":
            sought = out["load"][0] if kind == "at" else pull
            for key in ("point", "toward", "moment_arm", "turns"):
                sought.pop(key, None)
            sought |= {"on": draw(st.sampled_from(bones))["name"], "at": "?"}
            if kind == "pull at":
                sought.setdefault("direction", "up")
        case "moment arm":
            pull |= {"moment_arm": "?", "turns": draw(st.sampled_from(("counter-clockwise", "clockwise")))}
            pull.pop("toward", None)
            pull.setdefault("direction", "up")
        case "moment":
            out["couple"] = [
                {"name": "spring", "moment": "?", "turns": draw(st.sampled_from(("counter-clockwise", "clockwise")))}
            ]
        case "segment angle":
            _free_bone(draw, out)
        case "pull angle":
            for key in ("toward", "moment_arm", "turns", "point"):
                pull.pop(key, None)
            pull |= {
                "direction": draw(st.sampled_from(FREE)),
                "on": bones[0]["name"],
                "at": draw(lengths(10)),
                "force": draw(number(300, 900)) + " N",
            }
        case "moments only":
            out["balanced"] = False


def _free_bone(draw: Draw, out: Table) -> None:
    """The angle of the one segment is sought; pulls have an arm or are upright, so that sine or cosine stands alone."""
    out["segment"] = out["segment"][-1:]
    bone = out["segment"][0]
    bone["direction"] = draw(st.sampled_from(FREE))
    for each in (*out["load"], *out["muscle"], *out["force"]):
        for key in ("point", "toward"):
            each.pop(key, None)
        each |= {"on": bone["name"], "at": draw(lengths())}
    for each in (*out["muscle"], *out["force"]):
        each["direction"] = draw(st.sampled_from(("up", "down")))
    if draw(st.booleans()):
        out["muscle"][0] |= {
            "moment_arm": draw(lengths(2, 9)),
            "turns": draw(st.sampled_from(("counter-clockwise", "clockwise"))),
        }


def _ask(draw: Draw, kind: str, out: Table) -> None:
    sought = {
        "force": "biceps",
        "share": "biceps",
        "mass": "jug.mass",
        "weight": "jug.weight",
        "at": "jug.at",
        "pull at": "biceps.at",
        "moment arm": "biceps.moment_arm",
        "moment": "spring",
        "pull angle": "biceps.direction",
    }.get(kind, "")
    if kind == "segment angle":
        sought = next(each["name"] for each in out["segment"] if each["direction"].startswith("?")) + ".direction"
    if kind == "moments only":
        out["ask"] = ["total.moment", "biceps.moment", "jug.moment"]
        return
    match draw(st.integers(0, 3)):
        case 0:
            out["ask"] = [sought, "reaction"]
        case 1:
            out["ask"] = [sought, "reaction.right", "reaction.up"]
        case 2:
            out["ask"] = [sought, "reaction.along", "reaction.across", "reaction"]
            out["course"]["axes"] = f"along and across the {draw(st.sampled_from(out['segment']))['name']}"


def _supports(draw: Draw) -> Table:
    """A plank on two carriers, both forces sought, with no force at the point the moments are taken about."""
    loads = [{"name": name, "mass": draw(number(5, 90)) + " kg", "at": draw(lengths(5, 240))} for name in LOADS]
    ends = draw(st.sampled_from((("0 cm", "260 cm"), ("12 cm", "2.4 m"), ("-20 cm", "180 cm"))))
    carriers = [
        {"name": name, "at": at, "direction": "up", "force": "?"}
        for name, at in zip(("stern", "bow"), ends, strict=True)
    ]
    return {
        "title": "A random problem: two supports",
        "pivot": {"name": "near end", "reaction": False},
        "course": draw(courses()),
        "segment": [{"name": "plank", "length": "260 cm", "mass": draw(number(5, 30)) + " kg", "com": "50 %"}],
        "load": loads,
        "force": carriers,
    }


def _ropes(draw: Draw) -> Table:
    """A lamp on two slanted ropes that meet: two forces sought that only the level and the upright balance settle
    together.
    """
    place = draw(st.sampled_from((["0 cm", "0 cm"], ["12 cm", "-30 cm"])))
    ropes = [
        {"name": name, "point": place, "direction": f"{draw(angles())} deg above {side}", "force": "?"}
        for name, side in (("left rope", "left"), ("right rope", "right"))
    ]
    return {
        "title": "A random problem: two ropes",
        "pivot": {"name": "ring", "reaction": False},
        "course": draw(courses()),
        "load": [{"name": "lamp", "mass": draw(number(1, 12)) + " kg", "point": place}],
        "force": ropes,
    }


def _on_a_post(draw: Draw, kind: str, **pivot: str) -> Table:
    """A plank on a post, nothing yet that keeps it from turning."""
    return {
        "title": f"A random problem: {kind}",
        "pivot": {"name": "post", **pivot},
        "course": draw(courses()),
        "segment": [{"name": "plank", "length": "260 cm", "mass": draw(number(5, 30)) + " kg", "com": "50 %"}],
        "load": [{"name": "jug", "mass": draw(number(5, 90)) + " kg", "at": draw(lengths(5, 240))}],
    }


def _spread(draw: Draw) -> Table:
    """A load between two distances, even or growing, held by a rope."""
    out = _on_a_post(draw, "spread", support="trestle")
    heavy = draw(
        st.one_of(
            number(5, 90).map(lambda n: {"mass": f"{n} kg"}),
            forces().map(lambda f: {"weight": f}),
            number(1, 9).map(lambda n: {"weight": f"{n} N/cm"}),
        )
    )
    ends = draw(st.permutations([draw(lengths(5, 90)), draw(lengths(95, 240))]))
    grows = {"spread_to": "one end"} if draw(st.booleans()) else {}
    out["load"].append({"name": "basket", **heavy, "spread": list(ends), **grows})
    out["force"] = [{"name": "cord", "at": draw(lengths(150, 240)), **_slanted_up(draw), "force": "?"}]
    return out | {"ask": draw(st.sampled_from((["cord"], ["cord", "reaction"])))}


def _hung(draw: Draw) -> Table:
    """A cable over a pulley: the mass at its other end is known, or sought."""
    out = _on_a_post(draw, "hung")
    sling = {"name": "cord", "at": draw(lengths(150, 240)), **_slanted_up(draw)}
    if draw(st.booleans()):
        out["force"] = [{**sling, "hung": "?"}]
        return out | {"ask": draw(st.sampled_from((["cord.hung"], ["cord.hung", "reaction"])))}
    out["force"] = [{**sling, "hung": draw(number(5, 60)) + " kg"}]
    out["load"][0]["mass"] = "?"
    return out | {"ask": ["jug.mass"]}


def _slanted_up(draw: Draw) -> Table:
    return {
        "direction": draw(st.one_of(st.just("up"), st.tuples(st.sampled_from(SLANTED[4:6]), angles()).map(_filled)))
    }


def _filled(both: tuple[str, str]) -> str:
    return both[0].format(both[1])


def _area(draw: Draw) -> Table:
    """Two or three muscles that share by their cross-sections, all turning one way."""
    names = ("biceps", "brachialis", "brachioradialis")[: draw(st.integers(2, 3))]
    muscles = [
        {
            "name": name,
            "at": draw(lengths(3, 9)),
            "direction": draw(st.one_of(st.just("up"), angles().map("{} deg left of up".format))),
            "share": "area",
            "area": draw(number(2, 30)) + " cm^2",
        }
        for name in names
    ]
    return {
        "title": "A random problem: area",
        "pivot": {"name": "elbow", "bone": "humerus"},
        "course": draw(courses()),
        "segment": [{"name": "forearm", "length": "30 cm", "mass": "1.6 kg", "com": draw(lengths(10, 18))}],
        "load": [{"name": "jug", "mass": draw(number(1, 12)) + " kg", "at": draw(lengths(20, 36))}],
        "muscle": muscles,
    }


def _leaning(draw: Draw, kind: str, **pivot: str) -> Table:
    """A ladder against a smooth wall, its foot on a rough floor."""
    out = _on_a_post(draw, kind, **pivot)
    out["segment"][0]["direction"] = f"{draw(st.integers(50, 75))} deg above right"
    out["force"] = [{"name": "wall", "at": "260 cm", "direction": "left", "force": "?"}]
    return out


def _rough(draw: Draw) -> Table:
    return _leaning(draw, "rough", friction="?") | {"ask": ["wall", "reaction.friction"]}


def _about_to_slip(draw: Draw) -> Table:
    coefficient = draw(st.integers(15, 70).map(lambda n: f"0.{n}"))
    out = _leaning(draw, "about to slip", friction=coefficient, slips="left")
    out["load"][0]["at"] = "?"
    out["course"].pop("axes", None)
    return out | {"ask": ["jug.at", "wall"]}


WHOLE: dict[str, Callable[[Draw], Table]] = {
    "two supports": _supports,
    "two ropes": _ropes,
    "spread": _spread,
    "hung": _hung,
    "area": _area,
    "rough": _rough,
    "about to slip": _about_to_slip,
}
