"""How many examples hypothesis draws, in one place; none of them is timed.

A run of the suite draws few, `pytest --hypothesis-profile=thorough` many.
"""

from hypothesis import settings

settings.register_profile("quick", deadline=None, max_examples=100)
settings.register_profile("thorough", deadline=None, max_examples=2_000)
settings.load_profile("quick")


def fewer(times: int) -> settings:
    """So many times fewer examples than a test draws otherwise, where each is dear."""
    return settings(max_examples=max(settings().max_examples // times, 5))
