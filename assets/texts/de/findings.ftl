### What is said about a draft: findings, what to do about them, and the words within them.
