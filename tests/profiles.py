"""How many examples hypothesis draws, in one place; none of them is timed.

A run of the suite draws few, `pytest --hypothesis-profile=thorough` many. On CI they are the same
each time, so that what it says of a change is about the change; new ones are looked for elsewhere.
"""

import os

from hypothesis import HealthCheck, settings

# An example's first run may import what the next ones find there, and the machine may be busy.
UNTIMED = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.register_profile("quick", UNTIMED, max_examples=100)
settings.register_profile("thorough", UNTIMED, max_examples=2_000)
settings.register_profile("steady", UNTIMED, max_examples=100, derandomize=True, database=None)
settings.load_profile("steady" if os.environ.get("CI") else "quick")


def fewer(times: int) -> settings:
    """So many times fewer examples than a test draws otherwise, where each is dear."""
    return settings(max_examples=max(settings().max_examples // times, 5))
