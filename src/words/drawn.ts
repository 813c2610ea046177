/* Loaded first in a build in another language: words of the data are drawn in that language. */
import { options, type ComponentChildren, type VNode } from 'preact';
import { shown } from 'virtual:words';

const READ = ['aria-label', 'title', 'alt', 'placeholder'];
const before = options.vnode;

function drawn(children: ComponentChildren): ComponentChildren {
  return Array.isArray(children) ? children.map(drawn) : shown(children);
}

options.vnode = (vnode: VNode) => {
  const props = vnode.props as Record<string, unknown>;
  if (typeof vnode.type === 'string') {
    if ('children' in props) props['children'] = drawn(props['children'] as ComponentChildren);
    for (const name of READ) if (name in props) props[name] = shown(props[name]);
  }
  before?.(vnode);
};
