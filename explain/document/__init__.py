"""What a page or a book is made of before anyone decides how it looks, and the habits of English.

Knows passages and what an author may put into them; no mechanics, no format of output.
"""
