"""The acceleration of free fall as classes and students write it, in m/s²."""

from __future__ import annotations

STANDARD = 9.80665  # ISO 80000-3:2019, 3-9.2 (the 3rd General Conference on Weights and Measures, 1901)
IN_CLASSES = (9.81, 9.8, 9.80665, 10.0)  # what courses state (common practice, no source), the commonest first
IN_FEET = 32.2  # the same in ft/s², as courses in pounds state it (common practice, no source)
WRITTEN = (*IN_CLASSES, 9.806, 9.807, 9.82)  # with what students copy or look up besides
