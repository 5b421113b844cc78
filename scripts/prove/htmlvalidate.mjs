// What html-validate asks of the pages: all that it recommends, less these.
export default {
  root: true,
  extends: ["html-validate:recommended"],
  rules: {
    "no-trailing-whitespace": "off", // nobody reads it
    "long-title": "off", // a page's question may be long
    "no-redundant-for": "off", // some screen readers want the label's for even where it wraps its field
    "form-dup-name": "off", // check boxes of one list share their name, as in a link
    "no-redundant-role": "off", // tables that are laid out as cards would lose theirs
    "wcag/h32": "off", // nothing is submitted: figures follow the entries
  },
};
