"""How random tests draw: always the same examples, unless HYPOTHESIS_PROFILE=search asks for new and many more."""

from __future__ import annotations

import os

from hypothesis import HealthCheck, Phase, settings

settings.register_profile(
    "steady",
    derandomize=True,
    deadline=None,
    print_blob=False,
    phases=(Phase.explicit, Phase.generate, Phase.shrink),
    suppress_health_check=(HealthCheck.too_slow, HealthCheck.filter_too_much),
)
settings.register_profile("search", parent=settings.get_profile("steady"), derandomize=False, max_examples=5000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "steady"))
