/**
 * The account of each leg: everything an athlete did, as raw contacts of the leg that made them and weighed by force against a
 * standing bound. A description: it judges nothing, and it is never called risk.
 */
@NullMarked
package boundwright.load.account;

import org.jspecify.annotations.NullMarked;

