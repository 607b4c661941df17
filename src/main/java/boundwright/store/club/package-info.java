/** The stores of all clubs of one program. It answers: which clubs are there, and are their films read? */
@NullMarked
package boundwright.store.club;

import org.jspecify.annotations.NullMarked;
