"""What slips have in common: which items and distances there are, one at a time or all at once, and a spoilt account
from a change.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from itertools import permutations

from explain.marking.slips.account import Account, Item, Leg, Spoilt, Turned

HEAVY = ("weight", "load")
OTHER = {"sin": "cos", "cos": "sin", "tan": "tan"}
Items = tuple[Item, ...]


# ---------------------------------------------------------------------- which there are
def heavy(account: Account) -> Items:
    """The weights of segments and loads."""
    return tuple(each for each in account.items if each.kind in HEAVY)


def segments(account: Account) -> Items:
    """The weights of segments."""
    return tuple(each for each in account.items if each.kind == "weight")


def massed(account: Account) -> Items:
    """The weights that follow from a mass, or give one."""
    return tuple(each for each in account.items if each.mass)


def known(account: Account) -> Items:
    """What does not depend on the unknown pull: loads, weights, given forces."""
    return tuple(
        each for each in account.items if each.key not in account.unknowns and each.multiple[1] not in account.unknowns
    )


def forces(account: Account) -> Items:
    """Every item that has an arm: all but couples."""
    return tuple(each for each in account.items if each.kind != "couple")


def muscles(account: Account) -> Items:
    """Muscles, and other forces whose size is sought."""
    return tuple(
        each
        for each in forces(account)
        if each.kind == "muscle" or each.kind == "force" and each.key in account.unknowns
    )


def burdens(account: Account) -> Items:
    """Weights, loads and given forces: what the muscles balance."""
    pulling = {each.name for each in muscles(account)}
    return tuple(each for each in forces(account) if each.name not in pulling)


def oblique(items: Iterable[Item]) -> Items:
    """Those whose arm is written with a sine or a cosine."""
    return tuple(each for each in items if any(leg.turned.function for leg in each.legs))


def groups(items: Items) -> Iterator[Items]:
    """One at a time, then all together."""
    yield from ((each,) for each in items)
    if len(items) > 1:
        yield items


def pairs(items: Items) -> Iterator[tuple[Item, Item]]:
    """Each with each other, in both orders."""
    yield from permutations(items, 2)


def distances(account: Account) -> dict[str, Item]:
    """The distances that arms are made of, by key, with the first item that uses each; none that is sought."""
    out: dict[str, Item] = {}
    for item in account.items:
        for key in (*(leg.key for leg in item.legs), *([item.arm] if item.arm else [])):
            if (key in account.data or any(each.key == key for each in account.shares)) and not key.startswith("*"):
                out.setdefault(key, item)
    return out


def angles(account: Account) -> tuple[float, ...]:
    """The acute angles that are written anywhere in the working."""
    turned = [leg.turned for each in account.items for leg in each.legs] + [
        side for each in account.items for side in (each.level, each.upright) if side
    ]
    found = [each.degrees for each in turned if each.function and not each.unknown and 0 < each.degrees < 90]
    if account.lies is not None and 0 < (slope := abs((account.lies + 90) % 180 - 90)) < 90:
        found.append(round(slope, 9))
    return tuple(dict.fromkeys(found))


# ---------------------------------------------------------------------- what a spoilt account speaks of
def weight_key(account: Account, item: Item) -> str:
    """What goes wrong first when a weight does: the weight, or the mass that is sought."""
    return item.mass if item.key in account.unknowns and item.mass else item.key


def joint_key(account: Account) -> str:
    """The part of the joint force that is found first: the level one, where any force has a level part."""
    oblique_pull = any(each.level is not None and each.level.sign for each in account.items)
    return "reaction.right" if oblique_pull else "reaction.up"


def has_joint(account: Account) -> bool:
    """Whether the working goes on to a joint force."""
    return account.reaction and all(each.level is not None for each in forces(account))


def angle_of(item: Item) -> str:
    """The angle that an item's arm is written with, in words and without its number: it may be one that is to be
    found.
    """
    if not any(leg.turned.function for leg in item.legs):
        return ""
    return (
        "the slope of the bone"
        if item.kind in HEAVY
        else "the angle of the pull"
        if item.kind == "muscle"
        else "the angle of the force"
    )


def spoilt(slip: str, account: Account, touched: str, near: str, items: Items = ()) -> Spoilt:
    """A spoilt account that speaks of one item where there is one, and of its angle."""
    one = items[0] if len(items) == 1 else None
    angle = angle_of(items[0]) if items and len({angle_of(each) for each in items}) == 1 else ""
    return Spoilt(slip, account, touched, near, one.name if one else "", angle)


# ---------------------------------------------------------------------- changing an account
def change(account: Account, items: Iterable[Item], new: Callable[[Item], Item]) -> Account:
    """The account with some items made new."""
    names = {each.name for each in items}
    return replace(account, items=tuple(new(each) if each.name in names else each for each in account.items))


def alter(account: Account, items: Iterable[Item], **changes: object) -> Account:
    """The account with some fields of some items set to the same."""
    return change(account, items, lambda each: replace(each, **changes))  # type: ignore[arg-type]


def joined(account: Account, way: str) -> Iterator[tuple[Items, Account]]:
    """Every account in which forces and arms make moments in another way than by times: by the arm's number in the
    class's unit, in m and in cm.
    """
    for items in groups(forces(account)):
        for length in dict.fromkeys((account.length, 1.0, 0.01)):
            yield items, replace(alter(account, items, joined=way), length=length)


def turn(item: Item, new: Callable[[Turned], Turned]) -> Item:
    """The item with every sine or cosine of its arm made new."""
    return replace(
        item, legs=tuple(replace(leg, turned=new(leg.turned)) if leg.turned.function else leg for leg in item.legs)
    )


def reach(item: Item) -> tuple[Leg, ...]:
    """The legs of an arm, one leg for an arm that is given."""
    return (Leg(item.arm),) if item.arm else item.legs


def rearmed(account: Account, item: Item, legs: tuple[Leg, ...]) -> Account:
    """The account with an item's arm made of other legs."""
    return account.with_item(item.name, legs=legs, arm="")


def taken(one: Item, other: Item, times: float) -> tuple[Leg, ...]:
    """The arm of another force as it would be added to this one's: along the same line where it is a single
    distance.
    """
    legs = reach(other)
    if len(legs) == 1 and reach(one):
        return (Leg(legs[0].key, reach(one)[-1].turned, times),)
    return tuple(replace(leg, times=times * leg.times) for leg in legs)


def rescaled(account: Account, key: str, factor: float) -> Account:
    """The account with a datum, or what a share gives, taken so many times."""
    if any(each.key == key for each in account.shares):
        return replace(
            account,
            shares=tuple(
                replace(each, times=each.times * factor) if each.key == key else each for each in account.shares
            ),
        )
    return account.with_data(**{key: account.data[key] * factor})


def stated(account: Account, key: str, value: float) -> Account:
    """The account with a quantity that is this much, whatever it followed from."""
    return replace(account.with_data(**{key: value}), shares=tuple(each for each in account.shares if each.key != key))


def span(account: Account, item: Item) -> tuple[str, float] | None:
    """The key of a segment's centre of mass and the length of the segment, where both are given."""
    key = item.legs[-1].key if item.legs else ""
    if item.kind != "weight" or not key.endswith(".com") or item.length not in account.data:
        return None
    return key, account.data[item.length]


def solved(account: Account, unknown: str, finish: Callable[[list[float], float], float]) -> Account:
    """The account with one unknown solved for in another way."""
    return replace(account, solves={**account.solves, unknown: finish})


def sought(account: Account) -> Iterator[str]:
    """The unknowns that a balance gives by a division."""
    yield from (key for key in account.unknowns if not key.startswith("*angle "))
