/* Improves the pages; every page works without it. */
(() => {
  "use strict";
})();
