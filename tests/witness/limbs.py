"""Knows the problems of the body: a limb or the whole of it, held by muscles."""

from __future__ import annotations

from typing import Any

from .draw import Draw, Table
from .recipes import kind


def held_limb(draw: Draw, segments: int = 0, **known: Any) -> Table:
    """A limb with loads and one muscle, all of whose sizes are known where `known` gives its force."""
    problem = draw.limb(segments or draw.pick(1, 1, 1, 2, 3))
    draw.load(problem, draw.pick(1, 1, 2, 3))
    draw.muscle(problem, **known)
    return problem


@kind
def a_muscle_holds_a_limb(draw: Draw) -> Table:
    return held_limb(draw)


@kind
def the_joint_is_asked(draw: Draw) -> Table:
    problem = held_limb(draw, how=draw.pick("direction", "toward", "arm and direction"))
    asked = draw.pick(
        ["reaction"],
        ["reaction.right", "reaction.up"],
        ["reaction", "reaction.right", "reaction.up"],
        ["reaction.along", "reaction.across"],
    )
    if asked[0] == "reaction.along":
        problem["course"] = {"axes": f"along and across the {problem['segment'][-1]['name']}"}
    return problem | {"ask": [problem["muscle"][0]["name"], *asked]}


@kind
def two_muscles_share(draw: Draw) -> Table:
    problem = held_limb(draw)
    first = problem["muscle"][0]["name"]
    second = draw.muscle(problem, force=f"{draw.number(0.2, 1.6, 2)} * {first}")
    return problem | {"ask": [first, second["name"]]}


@kind
def one_muscle_is_known(draw: Draw) -> Table:
    problem = held_limb(draw, force=draw.force(50, 300))
    draw.muscle(problem)
    return problem


@kind
def muscles_come_in_pairs(draw: Draw) -> Table:
    problem = held_limb(draw, count=2)
    if draw.chance(0.4):
        problem["muscle"][0] |= {"area": draw.number(5, 40) + " cm^2"}
        problem["ask"] = [problem["muscle"][0]["name"], problem["muscle"][0]["name"] + ".stress"]
    return problem


@kind
def a_limit_is_set(draw: Draw) -> Table:
    problem = held_limb(draw)
    problem["muscle"][0]["limit"] = draw.force(300, 3000)
    return problem


@kind
def the_limit_is_reached(draw: Draw) -> Table:
    problem = held_limb(draw, limit=draw.force(200, 900), force="limit")
    problem["load"][0].pop("mass", None)
    problem["load"][0].pop("weight", None)
    problem["load"][0][draw.pick("mass", "weight")] = "?"
    return problem


@kind
def a_mass_is_sought(draw: Draw) -> Table:
    problem = held_limb(draw, force=draw.force(150, 900))
    for key in ("mass", "weight"):
        problem["load"][0].pop(key, None)
    problem["load"][0]["mass"] = "?"
    return problem


@kind
def a_place_is_sought(draw: Draw) -> Table:
    problem = held_limb(draw, force=draw.force(150, 900))
    problem["load"][0]["at"] = "?"
    return problem


@kind
def a_grip_is_sought(draw: Draw) -> Table:
    problem = held_limb(draw, how="direction", force=draw.force(150, 900))
    problem["muscle"][0]["at"] = "?"
    return problem


@kind
def a_centre_of_mass_is_sought(draw: Draw) -> Table:
    problem = held_limb(draw, segments=1, force=draw.force(50, 400))
    problem["segment"][0] |= {**draw.heft(1, 5), "com": "?"}
    if "weight" in problem["segment"][0]:
        problem["segment"][0].pop("mass", None)
    return problem


@kind
def a_moment_arm_is_sought(draw: Draw) -> Table:
    problem = held_limb(draw, how="arm", force=draw.force(200, 1500))
    problem["muscle"][0]["moment_arm"] = "?"
    return problem


@kind
def a_moment_is_sought(draw: Draw) -> Table:
    problem = draw.limb(draw.pick(1, 2, 3))
    draw.load(problem, draw.pick(1, 2))
    return problem | {"couple": [{"name": "motor", "moment": "?", "turns": draw.turns()}]}


@kind
def a_couple_helps(draw: Draw) -> Table:
    problem = held_limb(draw)
    moment = draw.number(1, 12) + " N m" if not draw.pounds else draw.number(10, 90) + " in lb"
    return problem | {"couple": [{"name": "sprung vest", "moment": moment, "turns": draw.turns()}]}


@kind
def a_slope_is_sought(draw: Draw) -> Table:
    problem = held_limb(draw, segments=1, how="arm", force=draw.force(150, 700))
    return sloping(draw, problem)


@kind
def a_slope_with_a_pull_told_by_the_bone(draw: Draw) -> Table:
    problem = held_limb(draw, segments=1, how="direction", force=draw.force(150, 900))
    problem["muscle"][0]["direction"] = draw.oblique()
    return sloping(draw, problem)


@kind
def a_slope_with_a_fixed_pull(draw: Draw) -> Table:
    problem = held_limb(draw, segments=draw.pick(1, 1, 2), how="direction", force=draw.force(100, 900))
    problem["muscle"][0]["direction"] = draw.pick("up", draw.slant())
    return sloping(draw, problem)


def sloping(draw: Draw, problem: Table) -> Table:
    segment = problem["segment"][0]
    segment["direction"] = draw.pick(
        "? above right",
        "? below right",
        "? right of down",
        "? left of down",
        "? above left",
        "? deg left of up",
        "? from right toward up",
        "? from down toward left",
    )
    return problem | {"ask": [f"{segment['name']}.direction"]}


@kind
def a_pull_direction_is_sought(draw: Draw) -> Table:
    problem = held_limb(draw, how="direction", force=draw.force(150, 700))
    muscle = problem["muscle"][0]
    muscle["direction"] = draw.pick(
        "? above right", "? above left", "? left of up", "? below left", "? from back toward up", "? from out toward up"
    )
    return problem | {"ask": [f"{muscle['name']}.direction"] + draw.pick([], ["reaction"])}


@kind
def another_force_pulls_too(draw: Draw) -> Table:
    problem = held_limb(draw)
    other: Table = {"name": "cable", "at": draw.length(15, 35), "force": draw.force(10, 120)}
    other |= (
        {"toward": [draw.side(draw.length(10, 60)), draw.side(draw.length(10, 60))]}
        if draw.chance(0.5)
        else {"direction": draw.heading()}
    )
    return problem | {"force": [other]}


@kind
def per_cents_of_a_person(draw: Draw) -> Table:
    problem = held_limb(draw)
    problem["person"] = {"mass": f"{draw.number(100, 210)} lb" if draw.pounds else f"{draw.number(45, 98)} kg"}
    for segment in problem["segment"]:
        segment.pop("weight", None)
        segment |= {"mass": draw.number(1, 9) + " %", "com": draw.number(38, 60) + " %"}
    if draw.chance(0.5):
        problem["force"] = [
            {"name": "floor", "at": draw.length(10, 30), "direction": "up", "force": draw.number(5, 50) + " %"}
        ]
    return problem


@kind
def masses_from_a_table(draw: Draw) -> Table:
    problem = held_limb(draw)
    problem["person"] = {"mass": draw.number(45, 98) + " kg", "table": "own.csv"}
    rows = []
    for segment in problem["segment"]:
        segment.pop("weight", None)
        segment |= {"mass": "table", "com": "table"}
        rows.append([segment["name"], draw.number(1, 9), draw.number(38, 60)])
    return problem | {"rows": rows}


@kind
def standing_on_one_leg(draw: Draw) -> Table:
    problem: Table = {
        "title": "One foot on the step",
        "pivot": {"name": "hip", "bone": "femur"},
        "person": {"mass": draw.number(48, 95) + " kg"},
    }
    problem["load"] = [
        {
            "name": "body above the hip",
            "mass": draw.number(76, 85, 3) + " %",
            "point": [draw.length(7, 13), draw.length(5, 25)],
        }
    ]
    muscle: Table = {"name": "hip abductors", "point": ["-" + draw.length(3, 7), draw.length(1, 9)]}
    muscle |= (
        {"toward": ["-" + draw.length(7, 11), "-" + draw.length(2, 9)]}
        if draw.chance(0.5)
        else {"direction": f"{draw.number(60, 85)} deg below left"}
    )
    return problem | {"muscle": [muscle], "ask": ["hip abductors", "reaction"]}


@kind
def parts_of_a_moment_are_asked(draw: Draw) -> Table:
    problem = held_limb(draw)
    names = [entry["name"] for entry in problem["muscle"] + problem["load"]]
    return problem | {"ask": [problem["muscle"][0]["name"], f"{draw.pick(*names)}.moment"]}


@kind
def moments_alone(draw: Draw) -> Table:
    problem = held_limb(draw, force=draw.force(50, 600))
    names = [entry["name"] for entry in problem["muscle"] + problem["load"]]
    asked = [f"{name}.moment" for name in names] + ["total.moment"]
    return problem | {"balanced": False, "ask": asked[-draw.pick(1, 2, 3) :]}


@kind
def muscles_share_by_their_cross_sections(draw: Draw) -> Table:
    """All of them turn one way: each grips the same side and pulls upwards."""
    problem = draw.limb(1)
    problem["segment"][0]["direction"] = draw.pick("right", f"{draw.angle()} deg {draw.pick('above', 'below')} right")
    draw.load(problem, draw.pick(1, 2))
    for _ in range(draw.pick(2, 2, 3)):
        grip: Table = {"at": draw.length(3, 9), "direction": draw.pick("up", f"{draw.number(3, 25)} deg left of up")}
        if draw.chance(0.3):
            grip = {"moment_arm": draw.length(2, 7), "turns": "counter-clockwise"}
        name = problem["spare"].pop(0)
        problem["muscle"].append({"name": name, **grip, "share": "area", "area": draw.number(2, 30) + " cm^2"})
    return problem


@kind
def a_limb_bears_a_spread_load(draw: Draw) -> Table:
    problem = held_limb(draw, how=draw.pick("direction", "arm"))
    sand = {"name": "wet sand", **draw.heft(1, 9), "on": draw.pick(*problem["segment"])["name"], **draw.spread(2, 18)}
    problem["load"] = [*problem["load"][:1], sand]
    return problem
