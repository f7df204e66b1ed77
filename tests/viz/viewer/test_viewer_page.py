"""The 3D page as a file: complete, quiet, the same each time; what it says without its script."""

import base64
import hashlib
import json
import re
from html.parser import HTMLParser

import pytest

from geometry.errors import BedcourseError
from viz.carried import demo
from viz.job import job
from viz.viewer import bundle
from viz.viewer.page import viewer_page

NASTY = "</script><img src=x onerror=alert(1)>&"
TEXT = re.sub(r'^name = ".*"', f"name = '{NASTY}'", demo().read_text(encoding="utf-8"),
              count=1, flags=re.M)  # fmt: skip
PAGE = viewer_page(job(TEXT))
MOST_BYTES = 3_000_000


class Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.held: dict[str, str] = {}
        self.open = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        self.open = dict(attrs).get("id") or tag

    def handle_data(self, data: str) -> None:
        self.held[self.open] = self.held.get(self.open, "") + data


@pytest.fixture(scope="module")
def read() -> Reader:
    reader = Reader()
    reader.feed(PAGE)
    return reader


def test_the_page_is_one_file_and_asks_nothing_of_a_network(read: Reader) -> None:
    assert len(PAGE.encode()) < MOST_BYTES
    for _, attributes in read.tags:
        for name in ("src", "href", "action", "data"):
            assert (attributes.get(name) or "data:").startswith("data:")
        assert not any(name.startswith("on") or name == "style" for name in attributes)
    assert "@import" not in read.held["style"]
    assert "url(" not in read.held["style"]


def test_the_policy_allows_this_script_and_style_alone(read: Reader) -> None:
    policy = next(a["content"] for t, a in read.tags if a.get("http-equiv"))
    assert policy is not None
    allowed = dict(part.strip().split(" ", 1) for part in policy.split(";"))
    assert allowed["default-src"] == "'none'"
    assert not {"http:", "https:", "*"} & set(policy.split())
    for name in ("script", "style"):
        (text,) = re.findall(f"<{name}>(.*?)</{name}>", PAGE, re.DOTALL)
        digest = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
        assert allowed[f"{name}-src"] == f"'sha256-{digest}'"


@pytest.mark.slow
def test_the_same_design_gives_the_same_bytes() -> None:
    assert viewer_page(job(TEXT)) == PAGE


def test_words_of_the_design_cannot_end_the_script_or_start_one(read: Reader) -> None:
    assert json.loads(read.held["model"])["name"] == NASTY
    assert read.held["title"].strip() == NASTY
    assert not any(attributes.get("src") == "x" for _, attributes in read.tags)


def test_without_scripts_there_are_a_picture_levels_and_cautions(read: Reader) -> None:
    images = [a for t, a in read.tags if t == "img" and a.get("src")]
    assert images
    assert all(a["alt"] and str(a["src"]).startswith("data:image/png") for a in images)
    head = PAGE[: PAGE.index('<script type="application/json"')]
    for words in ("finished floor", "competent person", "Drain stone", "yd³"):
        assert words in head


def test_libraries_of_the_bundle_are_named_with_their_licences() -> None:
    notice = (bundle.FOLDER / bundle.LICENCES).read_text(encoding="utf-8")
    assert re.search(r"^three [\d.]+ \(MIT\)$", notice, re.M)
    assert notice.count("Permission is hereby granted") == notice.count("(MIT)")
    script = bundle.script()
    assert notice.splitlines()[2] in script


def test_a_missing_script_is_said_in_one_sentence(
    monkeypatch: pytest.MonkeyPatch, tmp_path: object
) -> None:
    bundle.script.cache_clear()
    monkeypatch.setattr(bundle, "FOLDER", tmp_path)
    with pytest.raises(BedcourseError, match="install Bedcourse anew"):
        bundle.script()
    bundle.script.cache_clear()
