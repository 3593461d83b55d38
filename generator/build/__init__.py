"""Finished bytes in, an output folder out: only what changed is written, and only inside that folder.

In: `task.Task`s for `schedule.run_tasks`, then `Product`s for `store.write_output`.
Out: a `store.WriteReport`, and the files.
"""
