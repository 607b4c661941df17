/** A meet as it goes: list, attempts, ranks, what the next attempt is for. */
@NullMarked
package boundwright.web.meet;

import org.jspecify.annotations.NullMarked;

