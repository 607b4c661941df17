/** What somebody may see of a store who may not see all of it: the same repositories with less in them. */
@NullMarked
package boundwright.store.view;

import org.jspecify.annotations.NullMarked;
