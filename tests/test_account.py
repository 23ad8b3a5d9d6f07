"""The account of a working against the truth: sympy's moments at the settled values, and the values themselves."""

from __future__ import annotations

from cmath import exp, rect
from collections.abc import Iterator
from dataclasses import replace
from math import cos, inf, pi, radians, sin, tan

import pytest
from slip_problems import PROBLEMS, account, working
from worked import CONTRACT, EXTRA, HERE, SAMPLES, extra, worked

from explain.marking.slips.account import BOTH, Account, Impossible, Item, Leg, Turned
from explain.marking.slips.account_of_working import account_of
from explain.marking.slips.account_steps import acute, angle_of_arrow, divide, from_right, nearest_root
from explain.marking.slips.slip import Words, changed
from explain.marking.slips.account import Spoilt
from explain.marking.slips.verdict import LineVerdict, Marking
from explain.solve.engine import Working

FILES = (
    *SAMPLES,
    *CONTRACT,
    *sorted((HERE / "scenarios").glob("*.toml")),
    *sorted((HERE / "published").glob("*.toml")),
)
GEOMETRY = (
    ".across",
    ".rise",
    ".line",
    ".area",
    ".stress",
    ".limit",
    ".tx",
    ".ty",
)  # what no balance of an account needs


def _gaps(of: Working) -> list[str]:
    """What the account has otherwise than the truth, to a millionth of a thousandth; parts of the joint force
    against the largest force.
    """
    values, settled = account_of(of).values(), of.sizes
    largest = max([abs(value) for key, value in settled.items() if key.endswith((".force", ".weight"))] or [1.0])
    out = []
    for key, true in settled.items():
        if key not in values:
            out += [] if key.endswith(GEOMETRY) or key.startswith(("*fold", "*inclination")) else [f"{key} is missing"]
        elif abs(values[key] - true) > 1e-9 * max(abs(true), largest if "reaction" in key else abs(true), 1e-9):
            out.append(f"{key}: {values[key]}, in truth {true}")
    for name, expression in of.truth.moment.items():
        if name != "reaction" and f"*moment {name}" in values:
            true = of.truth.size(expression, of.settled.values)
            if abs(values[f"*moment {name}"] - true) > 1e-9 * max(abs(true), 1e-9):
                out.append(f"moment of {name}: {values[f'*moment {name}']}, in truth {true}")
        elif name != "reaction":
            out.append(f"the moment of {name} is missing")
    return out


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_the_values_are_those_of_the_truth(path: object) -> None:
    assert _gaps(worked(path)) == []  # type: ignore[arg-type]


@pytest.mark.parametrize("name", EXTRA)
def test_the_values_are_those_of_the_truth_for_odd_problems(name: str) -> None:
    assert _gaps(extra(name)) == []


@pytest.mark.parametrize("name", PROBLEMS)
def test_the_values_are_those_of_the_truth_for_the_problems_of_slips(name: str) -> None:
    assert _gaps(working(name)) == []


def test_a_value_that_is_fixed_carries_through() -> None:
    """F = (W_bag 34 cm + W_forearm 17 cm) cos 25 / (5 cm sin 58), with the arm of the pull left at 5 cm."""
    of = account("REF")
    carried = replace(of, fixed={"*arm biceps": 0.05}).values()
    assert carried["biceps.force"] == pytest.approx(of.values()["biceps.force"] * sin(radians(58)))


def test_one_unknown_can_be_solved_in_another_way_than_the_others() -> None:
    of = account("REF")
    assert replace(of, solves={"biceps.force": lambda others, by: 7.0}).values()["biceps.force"] == 7.0


def test_what_has_no_value_is_impossible() -> None:
    of = account("REF")
    with pytest.raises(Impossible):
        of.with_item("biceps", in_moments=0.0).values()
    with pytest.raises(Impossible):
        of.with_item("bag", powers=400).values()


def test_the_direction_of_the_joint_force_counts_from_right() -> None:
    """S05 of the project's own catalogue, computed: down to the right, 66.91 degrees below level."""
    assert account("S05").values()["*direction reaction"] == pytest.approx(-66.9146382713874)


def test_the_account_knows_the_data_as_written_and_the_other_rows_of_the_table() -> None:
    """Winter's table has forearm and hand with 2.2 per cent of the body, the hand with 0.6."""
    of = account("S03")
    assert of.written["forearm.length"] == ("27", "cm")
    assert {0.022, 0.006} <= {round(each, 9) for each in of.rows["forearm.mass%"]}
    assert of.length == 0.01 and of.lies == 0.0


# ---------------------------------------------------------------------- how a working is laid out
def _turned(written: Turned | None) -> str:
    if written is None:
        return "not told"
    angle = f"{written.degrees:g}" if written.degrees or not written.unknown else ""
    unknown = "".join(f" {'+' if k == 1 else k}{key}" for key, k in written.unknown)
    return f"{written.sign:+d} {written.function}{angle}{unknown}" if written.function else f"{written.sign:+d}"


def _item(item: Item) -> str:
    size = f" = {item.mass} g" if item.mass else f" = {' '.join(item.multiple)}" if item.multiple[0] else ""
    arm = ", ".join(f"{leg.key} {_turned(leg.turned)}" for leg in item.legs) or item.arm or "nothing"
    place = f"; {item.segment}, {item.length or 'of no length'}" if item.segment else ""
    return (
        f"{item.kind} {item.key}{size}: {item.turns:+d} by {arm}; right {_turned(item.level)}, "
        f"up {_turned(item.upright)}{place}"
    )


def _layout(of: Account) -> Iterator[str]:
    yield from map(_item, of.items)
    yield from (f"{balance} gives {unknown} {of.roots[unknown]:.5g}" for balance, unknown in of.stages)
    yield from (f"{each.key} = {each.part} of {each.whole}" for each in of.shares)


LAID_OUT = {
    "REF": """
        muscle biceps.force: +1 by biceps.at +1 sin58; right -1 cos83, up +1 sin83; forearm, forearm.length
        weight forearm.weight = forearm.mass g: -1 by forearm.com +1 cos25; right +0, up -1; forearm, forearm.length
        load bag.weight = bag.mass g: -1 by bag.at +1 cos25; right +0, up -1; forearm, forearm.length
        moments gives biceps.force 413.49""",
    "S11": """
        muscle abductors.force: +1 by abductors.moment_arm; right -1 cos71, up -1 sin71
        load body above the hip.weight = body above the hip.mass g: -1 by body above the hip.x +1; right +0, up -1
        moments gives abductors.force 1050.1
        body above the hip.mass = body above the hip.mass% of *person.mass""",
    "S19": """
        muscle patellar tendon.force: +1 by patellar tendon.moment_arm; right not told, up not told; shank and foot, """
    """of no length
        weight shank and foot.weight = shank and foot.mass g: -1 by shank and foot.com +1 sin +*angle """
    """shank and foot; right +0, up -1; shank and foot, of no length
        load cuff.weight = cuff.mass g: -1 by cuff.at +1 sin +*angle shank and foot; right +0, up -1; """
    """shank and foot, of no length
        moments gives *angle shank and foot 52.579""",
    "a ladder about to slip": """
        force wall.force: +1 by wall.at +1 sin65; right -1, up +0; ladder, ladder.length
        weight ladder.weight = ladder.mass g: -1 by ladder.com +1 cos65; right +0, up -1; ladder, ladder.length
        load painter.weight = painter.mass g: -1 by painter.at +1 cos65; right +0, up -1; ladder, ladder.length
        friction gives wall.force 281.55
        moments gives painter.at 3.9677
        ladder.com = ladder.com% of ladder.length""",
    "two ropes at a ring": """
        force left rope.force: +1 by nothing; right -1 cos30, up +1 sin30
        force right rope.force: +1 by nothing; right +1 cos +*angle right rope, up +1 sin +*angle right rope
        load lantern.weight = lantern.mass g: +1 by nothing; right +0, up -1
        level and upright gives *angle right rope 51.004
        level gives right rope.force 34.406""",
    "a cord aslant": """
        force cord.force: +1 by cord.at +1 sin40 +*angle forearm; right +1 cos40, up +1 sin40; forearm, of no length
        load jug.weight: -1 by jug.at +1 cos +*angle forearm; right +0, up -1; forearm, of no length
        moments gives *angle forearm 56.496""",
    "pulls by cross-sections": """
        muscle biceps.force: +1 by biceps.at +1 sin80; right -1 cos80, up +1 sin80; forearm, of no length
        muscle brachialis.force = brachialis.force% biceps.force: +1 by brachialis.moment_arm; right not told, """
    """up not told; forearm, of no length
        force wrist strap.force: +1 by wrist strap.at +1; right +0, up +1; forearm, of no length
        weight forearm.weight = forearm.mass g: -1 by forearm.com +1; right +0, up -1; forearm, of no length
        load jug.weight = jug.mass g: -1 by jug.at +1; right +0, up -1; forearm, of no length
        moments gives biceps.force 109.92""",
}


def _of(name: str) -> Account:
    return account_of(extra(name)) if name in EXTRA else account(name)


@pytest.mark.parametrize("name", LAID_OUT)
def test_a_working_is_laid_out_as_the_class_writes_it(name: str) -> None:
    """By hand: a pull at 58 deg to a bone 25 deg below the level lies 83 deg from the level; a ladder at 65 deg."""
    assert list(_layout(_of(name))) == [each.strip() for each in LAID_OUT[name].strip().splitlines()]


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("REF", (None, True, 335.0, 0.01, 0, True, 0.0, False)),
        ("S11", (None, True, None, 0.01, 0, True, 0.0, False)),
        ("a turning part", (325.0, True, 325.0, 0.01, 0, True, 0.0, False)),
        ("two ropes at a ring", (None, False, None, 1.0, 0, True, 0.0, False)),
        ("a ladder about to slip", (None, True, 65.0, 1.0, 1, True, 0.0, False)),
        ("a bracket about to slip down a wall", (None, True, 0.0, 1.0, 1, False, 270.0, False)),
        ("the least friction on a slope", (None, True, 65.0, 1.0, 0, True, 348.0, True)),
    ],
)
def test_what_an_account_knows_of_the_body_and_its_ground(name: str, told: tuple[object, ...]) -> None:
    """The bone of the parts, whether a joint force is told, the first segment's direction, the class's length in m."""
    of = _of(name)
    assert told == (of.bone, of.reaction, of.lies, of.length, of.slips, of.grounded, of.surface, of.rubs)


def test_data_stand_in_si_and_as_they_were_written() -> None:
    of = _of("REF")
    assert of.data == pytest.approx(
        {
            **{"forearm.mass": 1.6, "forearm.com": 0.17, "forearm.length": 0.38, "biceps.at": 0.05},
            **{"bag.mass": 5.0, "bag.at": 0.34, "g": 9.81},
            **{"*x biceps": 0.05 * cos(radians(25)), "*y biceps": -0.05 * sin(radians(25))},
            **{"*x forearm": 0.17 * cos(radians(25)), "*y forearm": -0.17 * sin(radians(25))},
            **{"*x bag": 0.34 * cos(radians(25)), "*y bag": -0.34 * sin(radians(25))},
        }
    )
    written = {"forearm.mass": ("1.6", "kg"), "g": ("9.81", ""), "forearm.com": ("17", "cm")}
    assert {**written, "biceps.at": ("5.0", "cm"), "bag.mass": ("5.0", "kg"), "bag.at": ("34", "cm")} == of.written
    assert {"painter.mass": ("70", "kg"), "*friction reaction": ("0.35", "")}.items() <= _of(
        "a ladder about to slip"
    ).written.items()
    assert _of("a turning part").written["spring.moment"] == ("150", "")


def test_every_value_of_the_reference_problem_by_hand() -> None:
    """Moments about the elbow; the elbow takes what is left over of pull and weights."""
    slope, pull = radians(25), radians(83)
    bag, own, arm = 5 * 9.81, 1.6 * 9.81, 0.05 * sin(radians(58))
    turning = (bag * 0.34 + own * 0.17) * cos(slope)
    force = turning / arm
    right, up = force * cos(pull), bag + own - force * sin(pull)
    found = _of("REF").values()
    expected = {
        **{"biceps.force": force, "bag.weight": bag, "forearm.weight": own, "*weights": bag + own, "total": -turning},
        **{"*arm biceps": arm, "*arm bag": 0.34 * cos(slope), "*arm forearm": 0.17 * cos(slope)},
        **{"*moment biceps": turning, "*moment bag": -bag * 0.34 * cos(slope), "*turning bag": bag * cos(slope)},
        **{"*moment forearm": -own * 0.17 * cos(slope), "*turning forearm": own * cos(slope)},
        **{"*turning biceps": force * sin(radians(58)), "*level biceps": -force * cos(pull)},
        **{"*upright biceps": force * sin(pull), "*level bag": 0.0, "*upright bag": -bag},
        **{"*level forearm": 0.0, "*upright forearm": -own},
        **{"*alone bag": bag * 0.34 * cos(slope) / arm, "*alone forearm": own * 0.17 * cos(slope) / arm},
        **{"reaction.right": right, "reaction.up": up, "reaction": (right * right + up * up) ** 0.5},
        **{"*angle reaction": 81.70, "*direction reaction": -81.70},
    }
    assert {key: found[key] for key in found.keys() - _of("REF").data.keys()} == pytest.approx(expected, rel=1e-3)


def test_what_a_student_has_found_stands_and_the_rest_follows() -> None:
    of = _of("REF")
    alone = replace(of, fixed={"*alone bag": 300.0}).values()
    assert alone["biceps.force"] == pytest.approx(300 + of.values()["*alone forearm"])
    up = replace(of, fixed={"reaction.up": 30.0, "reaction.right": 40.0}).values()
    assert (up["reaction"], up["*angle reaction"]) == pytest.approx((50.0, 36.8699), rel=1e-5)
    assert replace(of, fixed={"biceps.force": 400.0}).values()["*moment biceps"] == pytest.approx(16.9610, rel=1e-5)
    turned = _of("a turning part")
    assert turned.values()["reaction.along"] != turned.values()["reaction.right"]
    assert replace(turned, fixed={"reaction.along": 3.0, "reaction.across": 4.0}).values()["reaction"] == 5.0


def test_items_join_scale_and_count_as_they_are_told() -> None:
    of = _of("REF")
    bag = of.values()["*moment bag"]
    weight, arm = 5 * 9.81, 0.34 * cos(radians(25))
    assert of.with_item("bag", count=2).values()["*moment bag"] == pytest.approx(2 * bag)
    assert of.with_item("bag", scale=3.0).values()["bag.weight"] == pytest.approx(3 * weight)
    assert of.with_item("bag", powers=2).values()["bag.weight"] == pytest.approx(weight * 9.81)
    assert of.with_item("bag", powers=0).values()["bag.weight"] == pytest.approx(5)
    over = of.with_item("bag", joined="over").values()["*moment bag"]
    plus = of.with_item("bag", joined="plus").values()["*moment bag"]
    assert (over, plus) == pytest.approx((-weight / arm * 1e-4, -(weight + arm * 100) / 100))
    half = of.with_item("bag", in_moments=0.5, in_forces=0.0).values()
    assert half["total"] == pytest.approx(0.5 * bag + of.values()["*moment forearm"])
    assert half["reaction.up"] == pytest.approx(1.6 * 9.81 - half["*upright biceps"])
    assert of.without("bag").values()["*weights"] == pytest.approx(1.6 * 9.81)
    further = replace(of, extra=lambda _: -1.0).values()["biceps.force"] - of.values()["biceps.force"]
    assert further == pytest.approx(1 / (0.05 * sin(radians(58))))


# ---------------------------------------------------------------------- its steps
@pytest.mark.parametrize(
    ("written", "mode", "value"),
    [
        (Turned(), "deg", 1.0),
        (Turned(-1), "rad", -1.0),
        (Turned(0, "cos", 60.0), "deg", 0.0),
        (Turned(1, "sin", 30.0), "deg", 0.5),
        (Turned(-1, "cos", 30.0), "deg", -cos(pi / 6)),
        (Turned(1, "tan", 30.0), "deg", tan(pi / 6)),
        (Turned(1, "sin", 30.0), "rad", sin(30)),
        (Turned(1, "sin", 30.0), "grad", sin(30 * pi / 200)),
        (Turned(-1, "sin", 30.0, over=True), "deg", -2.0),
        (Turned(1, "cos", 80.0, (("a", -1), ("b", 2))), "deg", cos(radians(80 - 50 + 2 * 15))),
    ],
)
def test_a_sine_or_cosine_is_worth_what_its_calculator_says(written: Turned, mode: str, value: float) -> None:
    assert written.value({"a": 50.0, "b": 15.0}, mode) == pytest.approx(value)


def test_nothing_is_divided_by_nothing() -> None:
    with pytest.raises(Impossible, match="a division by nothing"):
        Turned(1, "cos", 90.0, over=True).value({})
    with pytest.raises(Impossible, match="the unknown drops out"):
        divide([1.0], 0.0)
    assert divide([6.0, -2.0], -0.5) == -8.0


def test_an_arm_is_the_sum_of_its_legs_or_a_datum() -> None:
    legs = (Leg("a", Turned(1, "cos", 60.0)), Leg("b", Turned(-1), 2.0))
    values = {"a": 0.4, "b": 0.03, "c": 0.05}
    assert Item("x", "load", "x.weight", legs=legs).terms(values) == pytest.approx(0.2 - 0.06)
    assert Item("x", "load", "x.weight", legs=legs, arm="c").terms(values) == 0.05


@pytest.mark.parametrize("key", ["f", "m", "p", "w", "d", "leg", "bone", "right", "up"])
def test_an_item_changes_with_each_quantity_that_it_is_made_of(key: str) -> None:
    slope = Turned(1, "cos", 0.0, (("bone", 1),))
    sides = Turned(1, "cos", 0.0, (("right", 1),)), Turned(1, "sin", 0.0, (("up", 1),))
    item = Item(
        *("x", "force", "f", "m"),
        multiple=("p", "w"),
        legs=(Leg("leg", slope),),
        arm="d",
        level=sides[0],
        upright=sides[1],
    )
    assert item.moved_by({key, "other"}) and not item.moved_by({"other"})


@pytest.mark.parametrize(
    ("parts", "true", "angle"),
    [
        ((0.0, 1.0, 0.0), 10.0, 0.0),  # a sine
        ((0.0, 1.0, 0.0), 170.0, 180.0),
        ((1.0, 0.0, -0.5), 50.0, 60.0),
        ((1.0, 0.0, -0.5), -50.0, -60.0),
        ((1.0, 0.0, -0.5), 400.0, 420.0),
        ((3.0, 4.0, -5.0), 0.0, 53.130102),  # both roots are one
    ],
)
def test_the_root_nearest_the_true_angle_is_taken(parts: tuple[float, float, float], true: float, angle: float) -> None:
    a, b, c = parts
    assert nearest_root(lambda x: a * cos(radians(x)) + b * sin(radians(x)) + c, true) == pytest.approx(angle, abs=1e-5)


@pytest.mark.parametrize("parts", [(1.0, 0.0, 1.01), (0.0, 0.0, 1.0), (0.0, 0.0, 0.0)])
def test_no_angle_balances_what_is_too_much(parts: tuple[float, float, float]) -> None:
    a, b, c = parts
    with pytest.raises(Impossible, match="no such angle"):
        nearest_root(lambda x: a * cos(radians(x)) + b * sin(radians(x)) + c, 0.0)


def test_an_angle_that_enters_twice_is_not_guessed() -> None:
    with pytest.raises(Impossible, match="enters twice"):
        nearest_root(lambda x: cos(radians(2 * x)) + cos(radians(x)), 30.0)


@pytest.mark.parametrize(("turn", "true"), [(1, 140.0), (-1, -140.0), (1, 500.0)])
def test_an_arrow_closes_what_is_left_over(turn: int, true: float) -> None:
    rest = rect(5.0, radians(-40))
    angle = angle_of_arrow(lambda size, at: rest + size * exp(1j * turn * radians(at)), true)
    assert angle == pytest.approx(true)


def test_no_arrow_where_nothing_is_left_or_the_parts_are_no_arrow() -> None:
    with pytest.raises(Impossible, match="nothing is left to pull"):
        angle_of_arrow(lambda size, at: size * exp(1j * radians(at)), 0.0)
    with pytest.raises(Impossible, match="nothing is left to pull"):
        angle_of_arrow(lambda size, at: 1 + 0j, 0.0)
    with pytest.raises(Impossible, match="no arrow closes"):
        angle_of_arrow(lambda size, at: 1 + 1j + size * complex(cos(radians(at)), 2 * sin(radians(at))), 0.0)


def test_angles_of_a_resultant() -> None:
    assert (acute(3, -4), acute(-4, 3), acute(0, 2)) == pytest.approx((53.130102, 36.869898, 90))
    assert (from_right(-1, 1), from_right(1, -1), from_right(-1, 0)) == pytest.approx((135, -45, 180))
    assert BOTH in dict(_of("two ropes at a ring").stages)


# ---------------------------------------------------------------------- what is said
def test_a_slip_speaks_of_its_item_and_its_angle_or_of_all() -> None:
    says = Words("t", "s", "l", "m", "g", item="each weight")
    of = Spoilt("x", account("REF"), "total", "balance")
    told = [replace(of, item=item, angle=angle) for item, angle in (("bag", ""), ("the bag", "the slope"), ("", ""))]
    assert [says.told("{item} by {angle}", each) for each in told] == [
        "the bag by the angle",
        "the bag by the slope",
        "each weight by the angle",
    ]
    assert Words("t", "s", "l", "m", "g").told("{item}", of) == "each of the forces"


def test_half_a_per_cent_is_a_change_and_less_is_none() -> None:
    true = {"a": 200.0, "b": -200.0, "zero": 0.0, "far": 1e6}
    assert changed(true, {"a": 200.99, "b": -201.01, "zero": 1e-6, "far": 1e6}) == ("b",)
    assert changed(true, {"a": 198.9, "zero": 1e-5, "new": inf}) == ("a", "zero", "new")


def test_a_marking_tells_where_it_went_wrong_and_whom_it_needs() -> None:
    lines = [LineVerdict(2, "b", "b", "holds"), LineVerdict(3, "c", "c", "slips"), LineVerdict(4, "d", "d", "slips")]
    wrong, right = Marking("A can", (*lines,), ()), Marking("A can", (lines[0],), ())
    asked = Marking("A can", (LineVerdict(1, "a", "a", "unclear"),), ())
    assert ["<Marking of 'A can': 3 lines, first slip in line 3>", "<Marking of 'A can': 1 lines, no line slips>"] == [
        repr(wrong),
        repr(right),
    ]
    assert [(3, True, 2), (None, False, 0), (None, True, 0)] == [
        (each.first_wrong, each.needs_a_person, len(each.issues)) for each in (wrong, right, asked)
    ]
