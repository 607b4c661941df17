/** The squad's pages: who is here, the tapes for today, the plan of the day. */
@NullMarked
package boundwright.web.squad;

import org.jspecify.annotations.NullMarked;

