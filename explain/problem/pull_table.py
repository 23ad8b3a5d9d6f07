"""The tables [[muscle]] and [[force]]: what pulls or pushes in any direction."""

from __future__ import annotations

from . import amounts
from ..equation.terms import Quantity
from .model import UNKNOWN, AtLimit, Pull, Unknown
from .other_words import OTHER_WORDS
from .table_parts import KEYS, SENSE, direction_of, name_of, not_both, place_of, turned_range
from .toml_table import Fields

_PLACES = {"load": '"35 cm"', "muscle": '"4.0 cm"', "force": '"29 cm"'}


def pull(kind: str, fields: Fields) -> Pull:
    """A muscle (kind "muscle") or any other force (kind "force")."""
    fields.only(KEYS[kind], OTHER_WORDS[kind])
    name = name_of(fields, "biceps" if kind == "muscle" else "cable")
    place, turns = place_of(fields), fields.choice("turns", SENSE) or 0
    arm = amounts.known_or_sought(fields, "moment_arm", "length")
    not_both(fields, "direction", "toward", 'direction = "up"')
    direction, toward = direction_of(fields), fields.pair("toward", "length", "any")
    _where_it_acts(kind, fields, placed=place.at is not None or place.point is not None)
    not_both(fields, "force", "hung", 'hung = "6 kg"')
    force = amounts.hung(fields) if fields.has("hung") else amounts.pull(fields)
    if force is None and kind == "force":
        raise fields.missing("force", 'the size of the force, or "?"; or hung', 'force = "95 N"')
    limit = amounts.known_or_sought(fields, "limit", "force")
    if isinstance(force, AtLimit) and kind == "force":
        raise fields.wrong("force", "a force that is no muscle, which alone has a limit", 'force = "95 N"')
    share = _share(fields, force) if kind == "muscle" else ""
    _check_limit(fields, UNKNOWN if force is None else force, limit)
    return Pull(
        kind,
        name,
        place,
        direction,
        toward,
        arm,
        turns,
        force or UNKNOWN,
        limit,
        fields.quantity("area", "area"),
        fields.whole("count", 1, 1000) or 1,
        turned_range(fields, direction),
        share,
    )


def _share(fields: Fields, force: object) -> str:
    """The key `share` of a muscle."""
    share = fields.choice("share", {"area": "area"}) or ""
    if share and not isinstance(force, Unknown | None):
        raise fields.fault(
            "share",
            "share beside a force that is told",
            'a pull that is sought: by share = "area" it follows from those of the others',
            'force = "?"',
        )
    if share and not fields.has("area"):
        raise fields.missing(
            "area",
            'its cross-section, since share = "area" gives each square centimetre the same pull',
            'area = "9.5 cm^2"',
        )
    return share


def _where_it_acts(kind: str, fields: Fields, placed: bool) -> None:
    """Refuse a force whose turning about the pivot is not settled."""
    if fields.has("moment_arm"):
        if not fields.has("turns"):
            raise fields.missing(
                "turns", "which way the force turns, since only its moment arm is given", 'turns = "counter-clockwise"'
            )
        if fields.has("toward") and not placed:
            raise fields.missing("at", "where the force acts, since it pulls toward a point", f"at = {_PLACES[kind]}")
        return
    if fields.has("turns"):
        raise fields.missing("moment_arm", "the moment arm that goes with turns", 'moment_arm = "4.0 cm"')
    if not placed:
        raise fields.missing(
            "at", "where the force acts: at, or point, or moment_arm with turns", f"at = {_PLACES[kind]}"
        )
    if not (fields.has("direction") or fields.has("toward")):
        raise fields.missing(
            "direction", "which way the force acts: direction, or toward, or moment_arm with turns", 'direction = "up"'
        )


def _check_limit(fields: Fields, force: object, limit: Quantity | Unknown | None) -> None:
    """Refuse a pull at a limit that is not given, and a limit that is asked for but not reached."""
    if isinstance(force, AtLimit) and limit is None:
        raise fields.missing("limit", 'the limit that force = "limit" speaks of', 'limit = "900 N"')
    if isinstance(limit, Unknown) and not isinstance(force, AtLimit | Unknown):
        raise fields.wrong(
            "limit", 'a force; "?" only beside force = "limit", where the muscle reaches it', 'limit = "900 N"'
        )
