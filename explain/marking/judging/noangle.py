"""An equation that no angle satisfies: what would make its sine or cosine so large."""

from __future__ import annotations

import numpy as np

from .kinds import kind_of
from .patterns import same
from .quantities import Row
from .state import State
from .values import Claim, Meaning, Suspect, Value


def no_angle(state: State, ratio: Row) -> None:
    """Suspect a line whose sine or cosine must exceed one, where an angle is asked for."""
    asked = next((key for key in state.hints.asked if kind_of(key) == "angle" and key in state.known.truth), None)
    if asked is None:
        return
    size, true, names = np.abs(ratio) * np.ones(state.known.n), state.known.truth[asked], ["inverse-ratio"]
    for function in (np.sin, np.cos):
        factor = size / np.abs(function(np.radians(true)))
        if same(factor, state.known.g, 1e-6):
            names.append("mass-for-weight")
        elif np.allclose(factor, factor[0], rtol=1e-6):
            power = np.log10(factor[0])
            names += (
                ["mixed-length-units", "decimal-shift"]
                if abs(power - round(power)) < 1e-3
                else ["g-twice"]
                if abs(factor[0] - 9.8) < 0.1
                else []
            )
    value = Value(size, size, float(size[0]), line=state.line)
    state.suspect(
        Suspect(state.line, [*names, "load-left-out", "segment-left-out"], "", True, "no angle does this", sticky=True),
        value,
    )
    state.claims.append(Claim(state.line, value, Meaning(), "", "", "", state.text, "suspect"))
