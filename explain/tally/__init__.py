"""What a class got wrong: answers and workings matched with slips, counted, and told without names. Marks nobody."""
