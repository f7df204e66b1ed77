"""Every language says all that the others say, with the same places for figures."""

import string

import pytest

from geometry.errors import BedcourseError
from geometry.materials.catalogue import MATERIALS
from viz.language.reader import NATIVE, codes, language

OTHERS = [code for code in codes() if code != NATIVE]


def places(words: str) -> set[str]:
    return {name for _, name, _, _ in string.Formatter().parse(words) if name is not None}


def said(code: str) -> dict[str, str]:
    words = language(code).words
    return {key: text for key, text in words.items() if not key.startswith("material.")}


def test_there_are_english_and_spanish() -> None:
    assert codes()[0] == "en"
    assert "es" in codes()


@pytest.mark.parametrize("code", OTHERS)
def test_all_keys_and_places_are_in_every_language(code: str) -> None:
    native, other = said(NATIVE), said(code)
    assert native.keys() == other.keys()
    assert {k: places(v) for k, v in native.items()} == {k: places(v) for k, v in other.items()}
    assert all(text.strip() == text and text for text in other.values())


@pytest.mark.parametrize("code", OTHERS)
def test_every_material_has_a_name_of_its_own(code: str) -> None:
    words = language(code).words
    named = {key.removeprefix("material.") for key in words if key.startswith("material.")}
    assert named == set(MATERIALS)
    assert len({words[f"material.{key}"] for key in named}) == len(named)


def test_units_are_said_in_the_language_and_figures_stay() -> None:
    spanish = language("es")
    assert spanish.units("1/16 in per ft") == "1/16 pulg/pie"
    assert spanish.units("412.35 ft") == "412.35 pies"
    assert spanish.units("4'-1 1/8\"") == "4'-1 1/8\""
    assert spanish.units("150 mm") == "150 mm"
    assert language("en").units("0.31 ft³, 10 mil") == "0.31 ft³, 10 mil"


def test_a_material_is_called_by_language_then_catalogue_then_key() -> None:
    assert language("es").material("STONE-57") == "Piedra lavada No. 57"
    assert language("en").material("stone-57") == MATERIALS["stone-57"].name
    assert language("es").material("tape") == "tape"


def test_an_unknown_language_names_those_there_are() -> None:
    with pytest.raises(BedcourseError, match="en, es"):
        language("xx")
