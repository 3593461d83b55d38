"""The preview and the kitchen desk: a content folder comes in, pages for a browser on this machine go out.

Everything that changes a file goes through the functions that the commands use; nothing here writes by itself.
"""
