"""The same words in every language at once, for a page that changes between them."""

from collections.abc import Callable

from viz.language.reader import Language, codes, language

Spoken = dict[str, str]
_LEAD = "viewer."


def spoken(said: Callable[[Language], str]) -> Spoken:
    """Return what a sentence is in each language, by the language's code."""
    return {code: said(language(code)) for code in codes()}


def same(text: str) -> Spoken:
    """Return figures that are the same in every language but for their units."""
    return spoken(lambda tongue: tongue.units(text))


def page_words(code: str) -> Spoken:
    """Return the page's own words in a language, by key, and the names of roles."""
    words = language(code).words
    own = {key.removeprefix(_LEAD): text for key, text in words.items() if key.startswith(_LEAD)}
    roles = {_spaced(key): text for key, text in words.items() if key.startswith("role.")}
    return own | roles


def _spaced(key: str) -> str:
    return key.replace("_", " ")


def capital(words: str) -> str:
    """Return words with a capital first."""
    return words[:1].upper() + words[1:]
