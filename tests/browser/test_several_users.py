"""Several people at once, each with a house of their own: nobody meets another's work."""

import pytest

from tests.bench.bench_users import MARK, design
from tests.browser.conftest import PATIENCE
from tests.conftest import CHROMIUM

pytestmark = [
    pytest.mark.slow,
    pytest.mark.browser,
    pytest.mark.skipif(not CHROMIUM.exists(), reason=f"{CHROMIUM} is not installed"),
]
USERS, EDITS = 3, 2


def put(page, user, edit):
    """Open the user's own design file."""
    if not page.locator("input[type=file]").count():
        page.get_by_role("button", name="Open and save").click()
    file = {"name": "x.toml", "mimeType": "application/toml", "buffer": design(user, edit)}
    page.locator("input[type=file]").first.set_input_files(file)


def test_everybody_sees_their_own_house_alone(open_at):
    pages = [open_at(1280, 900) for _ in range(USERS)]
    for edit in range(EDITS):
        for user, page in enumerate(pages):
            put(page, user, edit)
        for user, page in enumerate(pages):
            mine = f"House of user {user}"
            page.get_by_text(f"{mine} edit {edit}").first.wait_for(timeout=PATIENCE)
            assert set(MARK.findall(page.locator("body").inner_text())) == {mine}
