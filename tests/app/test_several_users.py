"""Several people at once, each with a house of their own: nobody is sent another's work."""

import asyncio
from concurrent.futures import ThreadPoolExecutor

import pytest

from tests.bench.visitor import mark, opened
from tests.serving import app_served

pytestmark = pytest.mark.slow
USERS, EDITS = 3, 2


async def visit(port, user):
    async with opened(port) as visitor:
        await visitor.send()
        await visitor.put(user)
        for edit in range(EDITS):
            await visitor.thicken(user, edit)  # raises where the user's own figure does not come
        # A sheet of paper, with the house's name in its title block.
        await visitor.send("view", "Section")
    return visitor.met


def test_everybody_is_sent_their_own_house_alone():
    async def together():
        return await asyncio.gather(*(visit(port, user) for user in range(1, USERS + 1)))

    # A browser test of the same worker may have a loop of its own running in this thread.
    with app_served() as (_, port), ThreadPoolExecutor(1) as apart:
        met = apart.submit(lambda: asyncio.run(together())).result()
    assert met == [{mark(user)} for user in range(1, USERS + 1)]
