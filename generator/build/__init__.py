"""Finished bytes in, an output folder out: only what changed is written, and only inside that folder.

In: `task.Task`s for `works.finish_tasks`, then their outputs for `store.write_output`; `cache` keeps what was made.
Out: a `store.WriteReport`, and the files.
"""
