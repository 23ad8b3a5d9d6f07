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


@kind
def a_plank_bears_a_spread_load(draw: Draw) -> Table:
    problem = draw.plank(level=draw.chance(0.6), held=draw.chance(0.5))
    heavy = {"weight": draw.per_length(0.5, 6)} if draw.chance(0.5) else draw.heft(5, 80)
    problem["load"].append({"name": "wet nets", **heavy, **draw.spread(20, 240)})
    if problem["pivot"].get("reaction", True):
        draw.support(problem, draw.pick(*ROPES), draw.length(150, 250), draw.pick("up", draw.slant()))
        asked = draw.pick([], ["reaction"], ["wet nets.at"])
        return problem | {"ask": [problem["force"][0]["name"], *asked]}
    return two_supports(draw, problem)


@kind
def a_mass_hangs_over_a_pulley(draw: Draw) -> Table:
    problem = draw.plank(level=draw.chance(0.5), held=True)
    sought = draw.chance(0.5)
    hung = "?" if sought else draw.number(3, 60) + " kg"
    sling = draw.support(problem, "sling", draw.length(150, 250), draw.pick("up", draw.slant(), draw.oblique()))
    sling.pop("force")
    sling["hung"] = hung
    if sought:
        return problem | {"ask": ["sling.hung", *draw.pick([], ["reaction"])]}
    problem["load"][0] = {"name": problem["load"][0]["name"], "mass": "?", "at": draw.length(30, 240)}
    return problem


@kind
def a_ladder_on_a_rough_surface(draw: Draw) -> Table:
    """The least coefficient of friction that holds, or whether a given one does."""
    problem = leaning(draw)
    problem["pivot"] |= {"friction": draw.pick("?", "?", draw.number(0.1, 0.9, 2))}
    asked = ["wall", "reaction.friction"] if problem["pivot"]["friction"] == "?" else ["wall", "reaction"]
    return problem | {"ask": asked}


@kind
def a_ladder_about_to_slip(draw: Draw) -> Table:
    """One condition more than the balances, for one unknown more: how far up, or how heavy."""
    problem = leaning(draw)
    away = "left" if "right" in problem["segment"][0]["direction"] else "right"
    problem["pivot"] |= {"friction": draw.number(0.2, 0.7, 2), "slips": away}
    problem["load"] = problem["load"][:1]
    problem["load"][0]["at"] = "?"
    return problem | {"ask": [f"{problem['load'][0]['name']}.at", "wall", *draw.pick([], ["reaction"])]}


def leaning(draw: Draw) -> Table:
    """A ladder against a smooth wall, its foot on the ground."""
    lean, against = draw.pick(("right", "left"), ("left", "right"))
    problem = draw.plank(held=True)
    problem["segment"][0] |= {"name": "ladder", "direction": f"{draw.number(50, 75)} deg above {lean}"}
    draw.support(problem, "wall", draw.length(180, 300), against)
    return problem
