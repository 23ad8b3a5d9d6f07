"""Work spread over processes or a cluster, and a bar that shows how far it is.

Knows nothing of what is done to an item.
"""
