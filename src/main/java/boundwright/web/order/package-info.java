/** The running order of today's session: who runs when, which tape moves, who measures, what is left out when time is lost. */
@NullMarked
package boundwright.web.order;

import org.jspecify.annotations.NullMarked;
