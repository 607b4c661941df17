/** What every page needs: forms and what was refused of them, figures, tokens, the frame, the way a page is written. Knows no page. */
@NullMarked
package boundwright.web.page;

import org.jspecify.annotations.NullMarked;

