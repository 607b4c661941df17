/**
 * What clashes when the hard rules and what the coach insists on cannot all hold together: exact feasibility on a small core and an
 * irreducible set of what stands against one another. The only package that knows the library for it.
 */
@NullMarked
package boundwright.season.conflict;

import org.jspecify.annotations.NullMarked;
