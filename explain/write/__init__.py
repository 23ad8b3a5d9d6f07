"""The writers: each turns a page into one kind of output, and decides nothing about what the page says."""
