/** What somebody else keeps among the guide's files; no folder but their own is empty. */
export const OWN_FILES = {
  ".git/HEAD": "ref: refs/heads/main\n",
  CNAME: "guide.example\n",
  "lakes/ember/pier.jpg": "a photograph",
} as const;
