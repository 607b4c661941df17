/**
 * The runway on one phone: the page, what the phone is told, and what it brings back. The page itself runs in the browser, on the room
 * {@code phone}; here its lines are turned into what happened at the track.
 */
@NullMarked
package boundwright.web.runway;

import org.jspecify.annotations.NullMarked;
