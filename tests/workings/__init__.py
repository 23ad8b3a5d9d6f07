"""Workings as students write them, right ones and spoilt ones, made from random problems: what the reader of
workings is measured with.
"""
