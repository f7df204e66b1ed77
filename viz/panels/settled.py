"""What stays as long as the server runs is looked through by the collector of garbage once."""

import gc
from functools import cache


@cache
def settle() -> None:
    """Take what there is now, modules above all, out of every later search for garbage.

    Called when the first page has been shown: by then nearly all that the app needs is loaded.
    """
    gc.collect()
    gc.freeze()
