"""Several people at once, each with a house of their own: nobody is sent another's work."""

import asyncio

import pytest

from tests.bench.bench_users import served
from tests.bench.visitor import mark, opened

pytestmark = pytest.mark.slow
USERS, EDITS = 3, 2


async def visit(port, user):
    async with opened(port) as visitor:
        await visitor.send()
        await visitor.put(user)
        for edit in range(EDITS):
            await visitor.thicken(user, edit)  # raises where the user's own figure does not come
    return visitor.met


def test_everybody_is_sent_their_own_house_alone():
    async def together():
        return await asyncio.gather(*(visit(port, user) for user in range(1, USERS + 1)))

    with served() as (_, port):
        met = asyncio.run(together())
    assert met == [{mark(user)} for user in range(1, USERS + 1)]
