"""Knows the problems of statics beside the body: ropes, planks, seesaws, ladders."""

from __future__ import annotations

from .draw import ROPES, Draw, Table
from .recipes import kind


@kind
def ropes_at_a_ring(draw: Draw) -> Table:
    origin = ["0 cm", "0 cm"]
    problem: Table = {
        "title": "A lamp in the net loft",
        "pivot": {"name": "ring", "reaction": False},
        "load": [{"name": "lamp", **draw.heft(1, 20), "point": origin}],
    }
    problem["force"] = [
        {"name": f"{side} rope", "point": origin, "direction": f"{draw.number(5, 80)} deg above {side}", "force": "?"}
        for side in ("left", "right")
    ]
    return problem


@kind
def a_rope_of_unknown_pull_and_slope(draw: Draw) -> Table:
    problem = ropes_at_a_ring(draw)
    problem["force"][0]["force"] = draw.force(10, 120)
    problem["force"][1]["direction"] = draw.pick("? above right", "? right of up")
    return problem


@kind
def a_level_plank_on_two_supports(draw: Draw) -> Table:
    return two_supports(draw, draw.plank())


@kind
def a_sloping_plank_on_two_supports(draw: Draw) -> Table:
    return two_supports(draw, draw.plank(level=False))


def two_supports(draw: Draw, problem: Table) -> Table:
    draw.support(problem, "front porter", "0 m" if draw.chance(0.5) else draw.length(20, 60))
    draw.support(problem, "back porter", draw.length(180, 250))
    if draw.chance(0.2):
        draw.pick(*problem["force"])["count"] = 2
    return problem


@kind
def a_plank_hinged_and_propped(draw: Draw) -> Table:
    problem = draw.plank(level=draw.chance(0.5), held=True)
    draw.support(problem, draw.pick(*ROPES), draw.length(150, 250), draw.pick("up", draw.slant(), draw.oblique()))
    return problem | {
        "ask": [problem["force"][0]["name"], *draw.pick([], ["reaction"], ["reaction.right", "reaction.up"])]
    }


@kind
def a_plank_with_three_unknowns(draw: Draw) -> Table:
    problem = draw.plank(level=draw.chance(0.6))
    draw.support(problem, "bow rope", draw.length(20, 90))
    draw.support(problem, "stern rope", draw.length(180, 250), draw.slant())
    draw.support(problem, "friction", draw.length(20, 90), draw.pick("left", "right"))
    return problem


@kind
def a_seesaw(draw: Draw) -> Table:
    problem = draw.plank(held=True)
    problem["segment"][0]["com"] = draw.pick("50 %", "0 cm", "0 %")
    problem["load"][0]["at"] = "-" + draw.length(40, 180)
    other: Table = {"name": "Runa", **draw.heft(20, 80), "at": "?"}
    if draw.chance(0.5):
        other = {"name": "Runa", draw.pick("mass", "weight"): "?", "at": draw.length(40, 180)}
    problem["load"] = [problem["load"][0], other]
    return problem


@kind
def a_ladder_on_rough_ground(draw: Draw) -> Table:
    lean, against = draw.pick(("right", "left"), ("left", "right"))
    problem = draw.plank()
    problem["segment"][0] |= {"name": "ladder", "direction": f"{draw.number(50, 75)} deg above {lean}"}
    draw.support(problem, "wall", draw.length(180, 300), against)
    draw.support(problem, "ground", "0 m")
    draw.support(problem, "friction", "0 m", lean)
    if draw.chance(0.4):
        problem["load"] = problem["load"][:1]
        problem["load"][0]["at"] = "?"
        problem["force"][2]["force"] = f"{draw.number(0.2, 0.7, 2)} * ground"
    return problem


@kind
def a_ladder_with_a_footing(draw: Draw) -> Table:
    problem = draw.plank(held=True)
    problem["segment"][0] |= {"name": "ladder", "direction": f"{draw.number(50, 75)} deg above right"}
    draw.support(problem, "wall", draw.length(180, 300), "left")
    return problem | {"ask": ["wall", *draw.pick(["reaction"], ["reaction.right", "reaction.up"])]}


@kind
def ropes_that_share(draw: Draw) -> Table:
    problem = draw.plank()
    draw.support(problem, "bow rope", "0 m")
    draw.support(problem, "stern rope", draw.length(180, 250), force=f"{draw.number(0.4, 1.5, 2)} * bow rope")
    problem["load"][0]["at"] = "?"
    return problem
