/** Checks of what those read who do not coach. */
@NullMarked
package boundwright.card.plain;

import org.jspecify.annotations.NullMarked;
