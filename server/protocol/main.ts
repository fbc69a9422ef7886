// The server's way in, one file for both of its hosts: a process of Node, or a web worker, which alone has `importScripts`.
if ('importScripts' in globalThis) void import('./browser.ts');
else void import('./node.ts').then(({ start }) => start());
