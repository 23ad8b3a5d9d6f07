"""Checks an expert makes on an answer, each silent outside its condition."""
from . import (
    angle_exists,
    arm_not_longer,
    distance_on_limb,
    force_balance,
    lever,
    limits,
    oblique_part,
    on_the_segment,
    parallel,
    plausible,
    possible,
    pressing,
    pulls,
    put_back,
    second_pivot,
    size_against_load,
    slope,
    triangle,
    units,
)

CHECKS = (possible, pulls, units, put_back, second_pivot, force_balance, size_against_load, triangle, parallel, oblique_part, pressing, arm_not_longer,
          slope, limits, angle_exists, distance_on_limb, on_the_segment, lever, plausible)
