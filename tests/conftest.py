"""What all tests share: random tests are judged by their results, never by the clock."""

from hypothesis import settings

settings.register_profile("steady", deadline=None)
settings.load_profile("steady")
