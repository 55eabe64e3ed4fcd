// With the link goes what it opened and was kept; records are somewhere else, and stay until they are sent.
for (const form of document.querySelectorAll('form[action^="/bed/leave"]')) {
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    await globalThis.caches?.delete("bed-pages").catch(() => {});
    form.submit();
  });
}
