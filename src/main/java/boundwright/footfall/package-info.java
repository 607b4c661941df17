/**
 * Contacts, flights and the sequences a coach writes in letters. This room answers: which foot lands when, what kind
 * of flight lies between, how many contacts does each leg get, and how are the legs kept level?
 */
@NullMarked
package boundwright.footfall;

import org.jspecify.annotations.NullMarked;

