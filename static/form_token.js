// What a page was given for its forms goes along with everything that its scripts send.
const given = document.querySelector('meta[name="form-token"]')?.content;

export const formHeaders = given ? { "x-form-token": given } : {};

document.addEventListener("htmx:configRequest", (event) => Object.assign(event.detail.headers, formHeaders));
